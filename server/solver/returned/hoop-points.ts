import { placeOn, type Centreline, type Piece } from '../geometry/centreline.ts';
import { arcCentre, pieceEnd } from '../geometry/slice.ts';
import { add, dot, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import type { Side } from './lines.ts';

type Two = { readonly left: Vector3; readonly right: Vector3 };

/** What a tape finds on a hoop. `up` is the direction of each leg from its foot, `out` square to it, away from the other leg. */
export type HoopPoints = {
  readonly foot: Two;
  readonly up: Two;
  readonly out: Two;
  /** Where the corner bends begin. */
  readonly tangent: Two;
  readonly crossbar: Piece;
  /** From each foot to where the leg's line meets the crossbar's line or circle [mm]. */
  readonly leg: { readonly left: number; readonly right: number };
  readonly middle: Vector3;
};

/** Finds leg, bend, crossbar, bend, leg; undefined for another tube, or where a leg's line passes the crossbar. */
export function hoopPoints({ pieces }: Centreline): HoopPoints | undefined {
  const [left, firstBend, bar] = pieces;
  const [secondBend, right] = pieces.slice(-2);
  if (left?.kind !== 'straight' || right?.kind !== 'straight') return undefined;
  if (firstBend?.kind !== 'arc' || secondBend?.kind !== 'arc' || firstBend === secondBend || bar === undefined)
    return undefined;
  // corner bends that touch have no crossbar between them: its line is where the tube goes there
  const turn = pieceEnd(firstBend);
  const crossbar: Piece =
    bar === secondBend ? { kind: 'straight', start: turn.point, direction: turn.tangent, length: 0 } : bar;
  const foot = { left: left.start, right: pieceEnd(right).point };
  const up = { left: left.direction, right: scale(right.direction, -1) };
  const apart = subtract(foot.right, foot.left);
  const outLeft = unit(subtract(scale(up.left, dot(apart, up.left)), apart));
  const outRight = unit(subtract(apart, scale(up.right, dot(apart, up.right))));
  const legs = { left: legTo(crossbar, foot.left, up.left), right: legTo(crossbar, foot.right, up.right) };
  if (legs.left === undefined || legs.right === undefined || outLeft === undefined || outRight === undefined)
    return undefined;
  return {
    foot,
    up,
    out: { left: outLeft, right: outRight },
    tangent: { left: pieceEnd(left).point, right: right.start },
    crossbar,
    leg: { left: legs.left, right: legs.right },
    middle: placeOn(crossbar, crossbar.length / 2).point,
  };
}

/** From a foot along a leg to where its line meets the crossbar's line, or its circle with `more` on its radius [mm]. */
function legTo(crossbar: Piece, foot: Vector3, direction: Vector3, more = 0): number | undefined {
  if (crossbar.kind === 'straight') {
    const across = subtract(direction, scale(crossbar.direction, dot(direction, crossbar.direction)));
    const rate = dot(direction, across);
    const start = subtract(crossbar.start, foot);
    return rate < 1e-12 ? undefined : (dot(start, across) + more * length(across)) / rate;
  }
  const toCentre = subtract(arcCentre(crossbar), foot);
  const along = dot(toCentre, direction);
  const inside = along ** 2 - dot(toCentre, toCentre) + (crossbar.radius + more) ** 2;
  return inside < 0 ? undefined : along + Math.sqrt(inside);
}

/** Length of a leg, over the outside of the corner or inside of it [mm]: the lines there run half a diameter further out. */
export function legOnSide(points: HoopPoints, which: 'left' | 'right', radius: number, side: Side): number | undefined {
  if (side === 0) return points.leg[which];
  const foot = add(points.foot[which], scale(points.out[which], side * radius));
  return legTo(points.crossbar, foot, points.up[which], side * radius);
}

/** The corner of a leg, on the centrelines, or on the outside or the inside of both tubes. */
export function hoopCorner(
  points: HoopPoints,
  which: 'left' | 'right',
  radius: number,
  side: Side,
): Vector3 | undefined {
  const leg = legOnSide(points, which, radius, side);
  return leg === undefined ? undefined : add(footOnSide(points, which, radius, side), scale(points.up[which], leg));
}

export const footOnSide = (points: HoopPoints, which: 'left' | 'right', radius: number, side: Side): Vector3 =>
  add(points.foot[which], scale(points.out[which], side * radius));

/**
 * A place on both legs, level with each other: as far below their corners.
 *
 * @param share of the shorter leg, from its foot upwards
 */
export function levelOn(points: HoopPoints, share: number): Two {
  const { leg, foot, up } = points;
  const shorter = Math.min(leg.left, leg.right);
  const at = (which: 'left' | 'right') => add(foot[which], scale(up[which], leg[which] - shorter + share * shorter));
  return { left: at('left'), right: at('right') };
}
