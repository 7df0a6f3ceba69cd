import { add, angleBetween, cross, dot, length, scale, squareTo, unit, type Vector3 } from '../../geometry/vector.ts';
import { leastTurnApart, type Rise } from './least-turn-apart.ts';
import { EITHER_WAY } from './turn-to.ts';
import { turnsAllRound } from './turns-all-round.ts';

/** A rotation vector [rad] in the structure's axes, and whether another turn is as near. */
export type LeastTurn = { readonly turn: Vector3; readonly eitherWay: boolean };

/** Two directions nearer to one line than this sine, 1°, leave a turn about it open; our own choice. */
const IN_LINE = Math.sin(EITHER_WAY);
/** A turn below this [rad] is the least: another one would turn the frame nearly over. Our own choice, checked all round. */
const SMALL = 0.5;
/** Places that the first direction is tried at all round, and how many of the turns found there are followed: our own choice. */
const ALL_ROUND = 72;
const TRIED = 2;
/** Two uprights this near are one; rounding. */
const ONE_UPRIGHT = 1e-12;

/**
 * The least turn that brings one direction to its slope: about the level line square to it, so that it goes on heading
 * the same way. A direction that stands upright heads nowhere: it goes down to any side, always the same.
 */
export function turnToOne({ along, sine, up }: Rise): LeastTurn {
  const level = cross(along, up);
  const rises = Math.atan2(dot(along, up), length(level));
  // along × up leads the direction towards up; of one that stands nearly upright it is mostly rounding
  const axis = squareTo(along, unit(level) ?? null);
  const angle = Math.asin(sine) - rises;
  return {
    turn: scale(axis, angle),
    eitherWay: length(level) < Math.sin(EITHER_WAY / 2) && Math.abs(angle) > EITHER_WAY,
  };
}

/**
 * The least turn that brings two directions to their slopes at once; undefined where none does. Against one upright v it
 * is the turn that takes w to v, where w is what v becomes in the frame: w · d₁ = sin a₁, w · d₂ = sin a₂, |w| = 1, of
 * the two such w the one nearer to v.
 */
export function turnToTwo(one: Rise, two: Rise): LeastTurn | undefined {
  const normal = cross(one.along, two.along);
  const size = length(normal);
  if (size < IN_LINE) return undefined;
  const oneUpright = length(cross(one.up, two.up)) < ONE_UPRIGHT && dot(one.up, two.up) > 0;
  const { upright, reached, eitherWay } = uprightIn(one, two, scale(normal, 1 / size));
  const start = leastBetween(upright, one.up);
  const turn = !oneUpright ? turnApart(one, two, start) : reached ? start : undefined;
  return turn === undefined ? undefined : { turn, eitherWay };
}

/** The least turn against two uprights: near what one upright alone asks for, else near the least of all round. */
function turnApart(one: Rise, two: Rise, start: Vector3): Vector3 | undefined {
  const near = leastTurnApart(one, two, start);
  if (near !== undefined && length(near) < SMALL) return near;
  const round = turnsAllRound(one, two, ALL_ROUND)
    .toSorted((a, b) => length(a) - length(b))
    .slice(0, TRIED);
  const found = round.map((begin) => leastTurnApart(one, two, begin));
  const [least] = [near, ...found].filter((turn) => turn !== undefined).toSorted((a, b) => length(a) - length(b));
  // where the slopes can only just be had, the least turn is not found to the last digit: one that does is taken
  return least ?? round[0];
}

/** The upright as it lies in the frame once both slopes are there; the nearest to it where they cannot be. */
function uprightIn(one: Rise, two: Rise, normal: Vector3): { upright: Vector3; reached: boolean; eitherWay: boolean } {
  const share = dot(one.along, two.along);
  const squares = 1 - share * share;
  const first = (one.sine - share * two.sine) / squares;
  const second = (two.sine - share * one.sine) / squares;
  const inPlane = add(scale(one.along, first), scale(two.along, second));
  const left = 1 - dot(inPlane, inPlane);
  const off = Math.sqrt(Math.max(0, left));
  const now = dot(one.up, normal);
  const eitherWay = Math.abs(now) < Math.sin(EITHER_WAY / 2) && off > Math.sin(EITHER_WAY / 2);
  const side = now < 0 && !eitherWay ? -1 : 1;
  const upright = unit(add(inPlane, scale(normal, side * off))) ?? one.up;
  return { upright, reached: left >= -ONE_UPRIGHT, eitherWay };
}

/** The least turn that takes one unit direction to another, as a rotation vector [rad]. */
function leastBetween(from: Vector3, to: Vector3): Vector3 {
  const angle = angleBetween(from, to);
  return scale(squareTo(from, unit(cross(from, to)) ?? null), angle);
}
