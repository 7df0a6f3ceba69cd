import type { PlaneReading } from '../../../plan/site.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import type { Band } from '../../../plan/figure.ts';

export type LevelPlane = PlaneReading['plane'];
export const LEVEL_PLANES: readonly LevelPlane[] = ['fore-and-aft', 'athwart'];

/** The way across in each plane, and what its two sides are called. */
const PLANES = {
  'fore-and-aft': { axis: 'x', plus: 'ahead', minus: 'back' },
  athwart: { axis: 'y', plus: 'port', minus: 'starboard' },
} as const;

/**
 * Seen square to a plane a line this short is a dot, some 6° from end on: a level held there has nothing to lie along, and
 * what it would show says nothing of the line; our own choice.
 */
const A_DOT = 0.1;

/** A line, up, what its figures rest on and their ±, which is asked for only where the line is seen at all. */
type PlaneStudy = {
  readonly direction: Vector3;
  readonly up: Vector3;
  readonly sources: readonly ['level-in-plane', ...'level-own-axes'[]];
  readonly bandOf: () => Band | null;
};

/** Below this a line is level, plumb or upright: rounding. */
const NOTHING = 1e-9;

/** A line as it is seen square to a plane: its unit direction (across, high). */
type Seen = {
  readonly across: number;
  /** Along up, and up across the line, d · u and e · u: e square to d in the plane, a quarter turn from across to z. */
  readonly rise: number;
  readonly aside: number;
};

/**
 * @param direction, up unit vectors in the structure's axes
 * @returns undefined where the line is seen end on
 */
function seenIn(plane: LevelPlane, direction: Vector3, up: Vector3): Seen | undefined {
  const { axis } = PLANES[plane];
  const size = Math.hypot(direction[axis], direction.z);
  if (size < A_DOT) return undefined;
  const [across, high] = [direction[axis] / size, direction.z / size];
  const rise = across * up[axis] + high * up.z;
  const aside = across * up.z - high * up[axis];
  return { across, rise, aside };
}

/**
 * How far a line is turned up from level in a plane of the structure [rad], all round, so that it goes on past level and
 * past plumb: atan2(d · u, e · u). What a level held there shows is this as an angle of 0 to 90°.
 *
 * @returns undefined where the line is seen end on
 */
export function turnInPlane(plane: LevelPlane, direction: Vector3, up: Vector3): number | undefined {
  const seen = seenIn(plane, direction, up);
  return seen === undefined ? undefined : Math.atan2(seen.rise, seen.aside);
}

/** The end that is higher now ahead, so that the side that it leans to is that of its upper end. */
const upperEnd = ({ across, rise, aside }: Seen): Seen =>
  rise < 0 ? { across: -across, rise: -rise, aside: -aside } : { across, rise, aside };

/**
 * What a level held in a plane of the structure shows along a line [degrees, 0 to 90]: atan2(|d · u|, |e · u|), with the
 * side that rises and the side that the line's upper end leans to. A post raked 10 back in a boat whose
 * bow is 0.8 down shows 80.8 fore and aft and leans 9.2 back.
 *
 * @returns undefined where the line is seen end on, so that no level can lie along it in that plane
 */
export function planeReading(
  plane: LevelPlane,
  { direction, up, sources, bandOf }: PlaneStudy,
): PlaneReading | undefined {
  const seen = seenIn(plane, direction, up);
  if (seen === undefined) return undefined;
  const { plus, minus } = PLANES[plane];
  const { across, rise, aside } = upperEnd(seen);
  const shows = Math.atan2(rise, Math.abs(aside)) * DEGREES;
  const level = rise < NOTHING;
  const plumbOrLevel = level || Math.abs(aside) < NOTHING;
  const plusMinus = bandOf();
  return {
    plane,
    shows: figure(
      shows,
      'deg',
      'γ = atan2(|d · u|, |e · u|)',
      [
        input('d · u', 'line-in-that-plane-along-up', rise, 'ratio'),
        input('e · u', 'square-to-it-in-that-plane-along-up', aside, 'ratio'),
      ],
      sources,
      plusMinus,
    ),
    rises: level ? null : Math.abs(across) < NOTHING ? 'up' : across > 0 ? plus : minus,
    offPlumb: figure(90 - shows, 'deg', 'β = 90 − γ', [input('γ', 'level-shows', shows, 'deg')], sources, plusMinus),
    leans: plumbOrLevel ? null : aside > 0 ? plus : minus,
  };
}
