import type { Figure } from '../../../plan/figure.ts';
import type { LegPlan } from '../../../plan/leg.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { cross, dot, rotate, subtract } from '../../geometry/vector.ts';
import type { LaidHinge, LaidLeg, LaidSite } from '../laid-site.ts';
import { riseOf } from '../rise.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import type { LegSlope } from './leg-slopes.ts';
import type { LegStudy } from './leg-study.ts';
import { leverOf } from './leg-way.ts';

type Adjust = NonNullable<LegPlan['adjust']>;

/**
 * What an adjustment can do: to the leg from foot point to head, and to the slope.
 *
 * @param slope what the legs set first; a leg of a frame on legs alone sets no slope by itself
 */
export function adjustPlan(
  study: SiteStudy,
  leg: LegStudy,
  slope: LegSlope | undefined,
  centre: Figure,
): LegPlan['adjust'] {
  const { adjust } = leg.leg;
  if (adjust === null) return null;
  const { by, travel } = adjust;
  const inputs = [input('L', 'centre-length', centre.value, 'mm'), input('w', 'travel-either-way', travel, 'mm')];
  const typed = ['leg-length', 'typed'] as const;
  return {
    by,
    least: figure(centre.value - travel, 'mm', 'L − w', inputs, typed, centre.band),
    most: figure(centre.value + travel, 'mm', 'L + w', inputs, typed, centre.band),
    slope: slope === undefined ? null : slopeOf(study, leg, slope, travel),
  };
}

/** How the slope changes while the leg goes from its middle to its least length, and to its most. */
function slopeOf(study: SiteStudy, leg: LegStudy, slope: LegSlope, travel: number): Adjust['slope'] {
  const end = (change: number): Figure | null => {
    const exact = slopeWith(slope, study.laid, leg.index, change);
    if (exact === undefined) return null;
    return figure(
      exact.after - exact.before,
      'deg',
      change < 0 ? 'Δ = s₁ − s₀, L₁ = L − w' : 'Δ = s₁ − s₀, L₁ = L + w',
      [
        input('s₁', slope.axis === 'turn' ? 'turn-at-that-length' : 'slope-at-that-length', exact.after, 'deg'),
        input('s₀', slope.axis === 'turn' ? 'turn-in-the-middle' : 'slope-in-the-middle', exact.before, 'deg'),
        input('L', 'centre-length', leg.cut.length, 'mm'),
        input('w', 'travel-either-way', travel, 'mm'),
      ],
      [slope.axis === 'turn' ? 'leg-turn' : 'leg-slope', 'typed'],
      siteBand(study, (laid) => {
        const one = slopeWith(slope, laid, leg.index, change);
        return one && one.after - one.before;
      }),
    );
  };
  const [least, most] = [end(-travel), end(travel)];
  return least === null || most === null ? null : { least, most };
}

/**
 * The slope with a leg as it is, and so much longer [degrees]; where the turn itself counts, that.
 *
 * @returns undefined without a hinge, where the leg does not set the slope, or cannot be so long on it
 */
function slopeWith(
  { rising }: LegSlope,
  laid: LaidSite,
  index: number,
  change: number,
): { readonly before: number; readonly after: number } | undefined {
  const leg = laid.legs[index] ?? null;
  const hinge = laid.frame?.hinge ?? null;
  if (leg === null || hinge === null || leverOf(leg, hinge) === undefined) return undefined;
  const turn = turnWith(leg, hinge, change);
  const line = rising(laid);
  if (turn === undefined || line === null) return turn === undefined ? undefined : { before: 0, after: turn * DEGREES };
  const rise = (along: typeof line.along): number => riseOf(along, line.up) * DEGREES;
  return { before: rise(line.along), after: rise(rotate(line.along, hinge.axis, turn)) };
}

/**
 * How far the frame turns about its hinge when a leg gets so much longer [rad]: with a and f from the hinge to head and foot,
 * |a|² + |f|² − L² = 2 (a_h f_h + C cos θ + S sin θ), C = a · f − a_h f_h, S = (h × a) · f. Derived.
 */
function turnWith({ head, foot }: LaidLeg, { at, axis }: LaidHinge, change: number): number | undefined {
  const [a, f] = [subtract(head, at), subtract(foot, at)];
  const along = dot(a, axis) * dot(f, axis);
  const [cosine, sine] = [dot(a, f) - along, dot(cross(axis, a), f)];
  const way = subtract(head, foot);
  const apart = Math.hypot(way.x, way.y, way.z);
  // |a|² + |f|² − L² is 2 a · f with the leg as it is, and so much less of it
  const reached = cosine - (change * (2 * apart + change)) / 2;
  const most = Math.hypot(cosine, sine);
  if (apart + change <= 0 || Math.abs(reached) > most) return undefined;
  const now = Math.atan2(sine, cosine);
  // of the two turns the one that goes on from where the frame stands
  return now - Math.sign(now) * Math.acos(reached / most);
}
