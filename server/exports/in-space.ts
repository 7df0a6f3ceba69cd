import type { Point } from '../plan/figure.ts';
import type { PlanPiece } from '../plan/frame.ts';

/** Shorter pieces are no pieces: a line of no length has no direction [mm]. From the rounding of doubles at 50 m. */
const NOTHING = 1e-6;

export type Arc = Extract<PlanPiece, { kind: 'arc' }>;

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const times = (a: Point, by: number): Point => ({ x: a.x * by, y: a.y * by, z: a.z * by });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const size = (a: Point): number => Math.hypot(a.x, a.y, a.z);
export const cross = (a: Point, b: Point): Point => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

/** The direction of a vector that has a length. */
export const direction = (a: Point): Point => times(a, 1 / size(a));

/** The pieces that have a length. */
export const realPieces = (pieces: readonly PlanPiece[]): PlanPiece[] =>
  pieces.filter(({ length }) => Math.abs(length) > NOTHING);

/** The point of an arc at a share of its angle from its start, 0 to 1. */
export function onArc({ from, centre, normal, angle }: Arc, share: number): Point {
  const arm = minus(from, centre);
  const turn = (angle * share * Math.PI) / 180;
  return plus(centre, plus(times(arm, Math.cos(turn)), times(cross(normal, arm), Math.sin(turn))));
}

/** An arc as equal parts that each turn through no more than an angle [degrees]. */
export function partsOfArc(arc: Arc, most: number): Arc[] {
  const count = Math.max(1, Math.ceil(arc.angle / most - 1e-9));
  return Array.from({ length: count }, (_, index) => ({
    ...arc,
    from: index === 0 ? arc.from : onArc(arc, index / count),
    to: index === count - 1 ? arc.to : onArc(arc, (index + 1) / count),
    angle: arc.angle / count,
    length: arc.length / count,
  }));
}
