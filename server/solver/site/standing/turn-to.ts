import { RADIANS, withinHalfTurn } from '../../geometry/angle.ts';

/** How something that is turned by θ rises: still + along cos θ + across sin θ. */
export type TurnEquation = { readonly still: number; readonly along: number; readonly across: number };

/** Two turns that do the same [rad], and whether the one is as near as the other. */
export type TurnFound = { readonly turn: number; readonly other: number; readonly eitherWay: boolean };

/** Two ways that differ by less than this are equally near [rad]: a level is not read finer on site. Our own choice. */
export const EITHER_WAY = RADIANS;
/** Rounding, as a share of what turns; what changes by less lies along the axis. */
const ROUNDING = 1e-12;

/**
 * The least turn that brings still + along cos θ + across sin θ to a goal: of θ = φ ± acos((goal − still) / r), r and φ
 * the length and the direction of (along, across), the one nearer to nothing. Where both are equally near the
 * right-handed one is taken, so that an error of a reading does not turn the frame over.
 *
 * @param size of what turns: 1 for a direction, distances for a place [mm]; what is rounding goes by it
 * @returns the turn [rad], −π … π; where the goal cannot be reached, what can: from low to high
 */
export function turnTo(
  { still, along, across }: TurnEquation,
  goal: number,
  size: number,
): TurnFound | { readonly low: number; readonly high: number } {
  const reach = Math.hypot(along, across);
  const wanted = goal - still;
  const rounding = ROUNDING * size;
  if (Math.abs(wanted) > reach + rounding) return { low: still - reach, high: still + reach };
  // nothing that a turn changes, and it is there already
  if (reach <= rounding) return { turn: 0, other: 0, eitherWay: false };
  const middle = Math.atan2(across, along);
  const aside = Math.atan2(Math.sqrt(Math.max(0, (reach - wanted) * (reach + wanted))), wanted);
  return nearer(withinHalfTurn(middle + aside), withinHalfTurn(middle - aside));
}

function nearer(one: number, two: number): TurnFound {
  const [right, left] = one > two ? [one, two] : [two, one];
  const apart = Math.min(right - left, 2 * Math.PI - (right - left));
  const eitherWay = apart > EITHER_WAY && Math.abs(Math.abs(right) - Math.abs(left)) < EITHER_WAY;
  return eitherWay || Math.abs(right) <= Math.abs(left)
    ? { turn: right, other: left, eitherWay }
    : { turn: left, other: right, eitherWay };
}
