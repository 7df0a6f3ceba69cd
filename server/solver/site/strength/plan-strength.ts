import type { Finding } from '../../../plan/finding.ts';
import type { StrengthPlan } from '../../../plan/strength.ts';
import type { SiteStudy } from '../site-study.ts';
import { freeToSway } from './free-to-sway.ts';
import { loadPlans } from './load-plan.ts';
import { listedLoads } from './published-loads.ts';
import { spanPlans } from './span-plan.ts';
import { adjustedFindings, spanFindings, strutFindings, swayFindings } from './strength-findings.ts';
import { strutPlan } from './strut-plan.ts';

/**
 * Legs as struts, straight stretches as beams, and what published loads do to both. All of it is information with its
 * sources, and no approval: local codes and qualified people decide what a frame may carry. Members are spoken of only
 * where somebody says what holds the frame or loads it: a hinge, a leg, a load of their own.
 */
export function planStrength(study: SiteStudy): { strength: StrengthPlan; findings: Finding[] } {
  const { site, grade } = study.source;
  const sways = freeToSway(study.laid);
  const struts = site.legs.flatMap((leg, index) => strutPlan(study, index, leg, sways[index] ?? false) ?? []);
  const list = listedLoads(site.load);
  const strength: StrengthPlan = {
    struts,
    spans: spanPlans(study, list),
    loads: loadPlans(study, list, struts),
  };
  const isCarried = site.standing.hinge !== null || site.legs.length > 0 || site.load !== null;
  return {
    strength,
    findings: [
      ...swayFindings(site.legs, sways),
      ...adjustedFindings(strength),
      ...strutFindings(strength),
      ...(isCarried ? spanFindings(strength, grade.proofStress) : []),
    ],
  };
}
