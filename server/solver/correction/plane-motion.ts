import { add, scale, sineAndCosine, subtract, type Vector3 } from '../geometry/vector.ts';

/** A rigid motion in the x-y plane: turned about the origin by `turn` [rad, right-handed about z], then shifted [mm]. */
export type PlaneMotion = { readonly turn: number; readonly shift: Vector3 };

const ORIGIN: Vector3 = { x: 0, y: 0, z: 0 };

/** The motion that leaves everything where it is. */
export const STILL: PlaneMotion = { turn: 0, shift: ORIGIN };

export function moveDirection({ turn }: PlaneMotion, { x, y, z }: Vector3): Vector3 {
  const { sine, cosine } = sineAndCosine(turn);
  return { x: cosine * x - sine * y, y: sine * x + cosine * y, z };
}

export const movePoint = (motion: PlaneMotion, point: Vector3): Vector3 =>
  add(moveDirection(motion, point), motion.shift);

/** First `inner`, then `outer`. */
export const compose = (outer: PlaneMotion, inner: PlaneMotion): PlaneMotion => ({
  turn: outer.turn + inner.turn,
  shift: movePoint(outer, inner.shift),
});

export const inverse = (motion: PlaneMotion): PlaneMotion => ({
  turn: -motion.turn,
  shift: moveDirection({ turn: -motion.turn, shift: ORIGIN }, scale(motion.shift, -1)),
});

/**
 * The motion in the plane that lays points on their partners with the least sum of squared distances (closed form
 * of the orthogonal Procrustes problem in two dimensions).
 *
 * @param pairs at least one; with a single pair the turn is 0
 */
export function bestFit(pairs: readonly { readonly from: Vector3; readonly to: Vector3 }[]): PlaneMotion {
  const count = pairs.length;
  if (count === 0) return STILL;
  const mean = (pick: (pair: { from: Vector3; to: Vector3 }) => Vector3) =>
    scale(
      pairs.reduce((sum, pair) => add(sum, pick(pair)), ORIGIN),
      1 / count,
    );
  const from = mean((pair) => pair.from);
  const to = mean((pair) => pair.to);
  let along = 0;
  let across = 0;
  for (const pair of pairs) {
    const a = subtract(pair.from, from);
    const b = subtract(pair.to, to);
    along += a.x * b.x + a.y * b.y;
    across += a.x * b.y - a.y * b.x;
  }
  const turn = along === 0 && across === 0 ? 0 : Math.atan2(across, along);
  return { turn, shift: subtract(to, moveDirection({ turn, shift: ORIGIN }, from)) };
}
