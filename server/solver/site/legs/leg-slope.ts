import type { Figure } from '../../../plan/figure.ts';
import type { LegPlan } from '../../../plan/leg.ts';
import { figure, input } from '../../figure.ts';
import { RADIANS } from '../../geometry/angle.ts';
import type { LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import type { LegSlope } from './leg-slopes.ts';
import { leverOf } from './leg-way.ts';

/** How long a leg gets while a slope rises, and what that comes from. */
type ForSlope = { readonly perDegree: number; readonly lever: number; readonly rate: number };

/**
 * How much longer a leg gets while a slope rises [mm a degree]: its lever about what the frame turns about, over how much
 * slope that turn gives. Derived: the change of |H − F| where the head H moves with the frame.
 *
 * @returns undefined where the leg does not set the slope
 */
function forSlope({ turn }: LegSlope, laid: LaidSite, index: number): ForSlope | undefined {
  const leg = laid.legs[index] ?? null;
  const about = turn(laid);
  const lever = leg === null || about === undefined ? undefined : leverOf(leg, about);
  if (about === undefined || lever === undefined) return undefined;
  return { perDegree: (lever * RADIANS) / about.rate, lever, rate: about.rate };
}

/** The same as a number with its sign. */
export const signedPerDegree = (slope: LegSlope, laid: LaidSite, index: number): number | undefined =>
  forSlope(slope, laid, index)?.perDegree;

/** Leg for a degree of each slope that the legs set, and of the first of them without its sign; null where it sets none. */
export function slopePlans(
  study: SiteStudy,
  slopes: readonly LegSlope[],
  index: number,
): Pick<LegPlan, 'slopes' | 'perDegree'> {
  const plans = slopes.flatMap((slope): LegPlan['slopes'] => {
    const perDegree = perDegreeOf(study, slope, index);
    return perDegree === null ? [] : [{ axis: slope.axis, field: slope.field, perDegree }];
  });
  const [first] = slopes;
  const own = plans.find(({ axis, field }) => axis === first?.axis && field === first.field)?.perDegree;
  return { slopes: plans, perDegree: own === undefined ? null : { ...own, value: Math.abs(own.value) } };
}

function perDegreeOf(study: SiteStudy, slope: LegSlope, index: number): Figure | null {
  const found = forSlope(slope, study.laid, index);
  if (found === undefined) return null;
  const isTurn = slope.axis === 'turn';
  const lever = input('b', 'lever-of-the-leg', found.lever, 'mm');
  return figure(
    found.perDegree,
    'mm/deg',
    isTurn ? 'p = b π / 180' : 'p = b π / (180 q)',
    isTurn ? [lever] : [lever, input('q', 'slope-for-a-degree-of-turn', found.rate, 'ratio')],
    [isTurn ? 'leg-turn' : 'leg-slope'],
    siteBand(study, (laid) => signedPerDegree(slope, laid, index)),
  );
}
