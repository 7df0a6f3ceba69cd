import type { Finding } from '../../../plan/finding.ts';
import type { LegPlan } from '../../../plan/leg.ts';
import { finding } from '../../finding.ts';
import { doubtOf, type SiteStudy } from '../site-study.ts';
import { adjustPlan } from './leg-adjust.ts';
import { lengthParts } from './leg-band.ts';
import { cutCautions } from './leg-cautions.ts';
import { cutLength } from './leg-cut.ts';
import { footPlan, headPlan } from './leg-ends.ts';
import { legLengths } from './leg-lengths.ts';
import { legTurns, type LegTurn } from './leg-order.ts';
import { rollOf } from './leg-roll.ts';
import { legSides } from './leg-sides.ts';
import { slopePlans } from './leg-slope.ts';
import { legSlopes, type LegSlope } from './leg-slopes.ts';
import { studyLeg, type LegStudy } from './leg-study.ts';
import { legTemplates } from './leg-templates.ts';
import { doubtFindings, worthMeasuring } from './measure-again.ts';

/**
 * How each leg is cut: lengths with what they are doubtful by, wraps, roll, what it does to the slope, and in which order
 * legs are set up. A leg that cannot be cut is left out, and a finding says why.
 */
export function planLegs(study: SiteStudy): { legs: LegPlan[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const legs: LegStudy[] = [];
  for (const index of study.source.site.legs.keys()) {
    const one = studyLeg(study, index);
    if (one === undefined) continue;
    if ('study' in one) legs.push(one.study);
    else findings.push(...one.findings);
  }
  const slopes = legSlopes(study);
  const turns = legTurns(study, legs, slopes[0]);
  const sides = legSides(study.laid.legs);
  const plans = legs.flatMap((leg): LegPlan[] => {
    const turn = turns.get(leg.index);
    if (turn === undefined) return [];
    const planned = planLeg(study, leg, slopes, { ...turn, side: sides[leg.index] ?? 'middle' });
    findings.push(...cutCautions(leg), ...planned.findings);
    return [planned.plan];
  });
  const count = plans.filter(isWelded).length;
  if (count > 0) findings.push(finding('legs-not-purged', 'note', '/site/legs', { value: count }));
  return { legs: plans, findings };
}

/** A saddle is welded to the frame, a foot to its plate. */
const isWelded = ({ head, foot }: LegPlan): boolean =>
  head.end === 'saddle' || (foot.end !== 'socket' && foot.plate > 0);

function planLeg(
  study: SiteStudy,
  leg: LegStudy,
  slopes: readonly LegSlope[],
  among: LegTurn & Pick<LegPlan, 'side'>,
): { readonly plan: LegPlan; readonly findings: readonly Finding[] } {
  const { laid, at, pick } = leg;
  const parts = lengthParts(
    study,
    pick((one) => cutLength(one, at.headTip)),
    leg.cut,
  );
  const lengths = legLengths(study, leg, parts);
  const roll = rollOf(study, leg);
  const again = worthMeasuring(parts);
  const plan: LegPlan = {
    number: leg.index + 1,
    name: laid.name,
    field: laid.field,
    outsideDiameter: laid.outsideDiameter,
    wall: laid.wall,
    foot: footPlan(study, leg, study.source.gap),
    head: headPlan(study, leg),
    footPoint: laid.foot,
    headPoint: laid.head,
    ...lengths,
    roll: roll?.roll ?? null,
    rollRound: roll?.rollRound ?? null,
    templates: legTemplates(leg, study.source),
    adjust: adjustPlan(study, leg, slopes[0], lengths.centreLength),
    ...slopePlans(study, slopes, leg.index),
    doubts: parts.map((part) => doubtOf(part, 'mm')),
    measureAgain: again === null ? null : doubtOf(again, 'mm'),
    ...among,
  };
  return { plan, findings: doubtFindings(leg, lengths.cutLength.value, parts) };
}
