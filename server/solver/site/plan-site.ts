import type { Finding } from '../../plan/finding.ts';
import type { SitePlan } from '../../plan/site.ts';
import { planGaps } from './gaps/plan-gaps.ts';
import { EXACT, type SiteSource } from './laid-site.ts';
import { laySite } from './lay-site.ts';
import { levelRows } from './level/level-rows.ts';
import { planLevel } from './level/plan-level.ts';
import { planLegs } from './legs/plan-legs.ts';
import { namedHere } from './points/name-no-place.ts';
import { planPoints } from './points/plan-points.ts';
import { siteDoubts } from './site-doubts.ts';
import type { SiteStudy } from './site-study.ts';
import { planStanding } from './standing/plan-standing.ts';
import { planStrength } from './strength/plan-strength.ts';
import { variedSites } from './varied-sites.ts';
import { siteViews } from './views/site-views.ts';

/** What there is to say of the site. */
export type PlannedSite = { readonly site: SitePlan; readonly findings: readonly Finding[] };

/** What the level must show, where points are, legs and the room around tubes, with bands; what stops any of it. */
export function planSite(source: SiteSource): PlannedSite {
  const exact = laySite(source, EXACT);
  const off = variedSites((change) => laySite(source, change, exact), siteDoubts(source), exact);
  const study: SiteStudy = { source, laid: exact.laid, varied: off.varied };
  const level = planLevel(study);
  const points = planPoints(study);
  const standing = planStanding(study);
  const legs = planLegs(study);
  const gaps = planGaps(study);
  const strength = planStrength(study);
  return {
    site: {
      level: level.level,
      rows: levelRows(study),
      points: points.points,
      standing: standing.standing,
      legs: legs.legs,
      gaps: gaps.gaps,
      strength: strength.strength,
      views: siteViews(study, gaps.gaps),
    },
    findings: [exact, off, level, points, standing, legs, gaps, strength]
      .flatMap((part) => part.findings)
      .map((one) => namedHere(one, source.site)),
  };
}
