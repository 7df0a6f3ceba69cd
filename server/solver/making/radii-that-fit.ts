import { arcsOf } from '../bending/arcs.ts';
import { flatteningGuidance } from '../bending/forming.ts';
import { FAR_CORNER } from '../geometry/bend-table.ts';
import type { Centreline } from '../geometry/centreline.ts';

/** What a member allows of one centreline radius for all its die bends [mm, percent]. */
export type RadiusInput = {
  readonly centreline: Centreline;
  readonly outsideDiameter: number;
  /** Elongation at break of the grade [%]. */
  readonly elongation: number;
  /** Flattening that is still taken [% of D]. */
  readonly flattening: number;
  /** Least straight between two die bends; at the two ends it need only not be negative, for length can be left on. */
  readonly leastStraight: number;
  /** Radius after release for 1 mm of the die's radius [–], 1 or a little more. */
  readonly growth: number;
};

export type RadiusRange = { readonly low: number; readonly high: number };

/** Above this ratio of radius to diameter the flattening rule gives one value (see forming.ts). */
const FLAT_FROM = 4;

/**
 * Least centreline radius of a die that a tube can be bent on [mm]: its outer fibre stretches by x = D/(2R) ≤ A, and it
 * flattens by no more than is taken, 20 D/R % up to R = 4D and 5 % above (the rule of forming.ts); and R > D/2.
 *
 * @returns null where no radius is round enough
 */
export function leastRadius({
  outsideDiameter,
  elongation,
  flattening,
}: Pick<RadiusInput, 'outsideDiameter' | 'elongation' | 'flattening'>): number | null {
  const byElongation = (50 * outsideDiameter) / elongation;
  if (!(elongation > 0) || flattening < flatteningGuidance(Infinity)) return null;
  const byFlattening = (outsideDiameter * flatteningGuidance(1)) / flattening;
  return Math.max(byElongation, Math.min(byFlattening, FLAT_FROM * outsideDiameter), outsideDiameter / 2);
}

/**
 * The centreline radii after release that a member can have in all its die bends with its corners held where they are.
 *
 * Low from the tube (leastRadius, times the growth on release). High from the straights: between corners P apart,
 * S = P − R (tan(θ₁/2) + tan(θ₂/2)) must stay the least straight. Beside a rolled arc, and at the ends, S must not be
 * negative.
 *
 * @returns null where nothing fits, where there is no die bend, and where a bend of 170° or more has no corner to hold
 */
export function radiiThatFit(input: RadiusInput): RadiusRange | null {
  const least = leastRadius(input);
  const { arcs, lastStraight } = arcsOf(input.centreline);
  if (least === null || !arcs.some(({ piece }) => piece.made === 'die')) return null;
  let high = Infinity;
  let before = { factor: 0, setback: 0, die: false };
  for (const { piece, feed } of arcs) {
    const die = piece.made === 'die';
    if (die && piece.angle >= FAR_CORNER) return null;
    const factor = die ? Math.tan(piece.angle / 2) : 0;
    const here = { factor, setback: factor * piece.radius, die };
    high = Math.min(high, radiusFor(feed, before, here, before.die && die ? input.leastStraight : 0));
    before = here;
  }
  high = Math.min(high, radiusFor(lastStraight, before, { factor: 0, setback: 0 }, 0));
  const low = least * input.growth;
  return low <= high ? { low, high } : null;
}

type Corner = { readonly factor: number; readonly setback: number };

/** R at which a straight between two corners is as long as it must be: (P − S) / (tan(θ₁/2) + tan(θ₂/2)) [mm]. */
function radiusFor(straight: number, one: Corner, other: Corner, least: number): number {
  const factor = one.factor + other.factor;
  if (factor === 0) return Infinity;
  return (straight + one.setback + other.setback - least) / factor;
}
