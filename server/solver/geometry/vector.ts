/** A point or a direction in the frame's right-handed axes [mm, or a unit vector]. */
export type Vector3 = { readonly x: number; readonly y: number; readonly z: number };

export const ORIGIN: Vector3 = { x: 0, y: 0, z: 0 };

/** The three directions of the frame's axes. */
export const AXES: readonly Vector3[] = [
  { x: 1, y: 0, z: 0 },
  { x: 0, y: 1, z: 0 },
  { x: 0, y: 0, z: 1 },
];

export const add = (a: Vector3, b: Vector3): Vector3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const subtract = (a: Vector3, b: Vector3): Vector3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const scale = (a: Vector3, factor: number): Vector3 => ({ x: a.x * factor, y: a.y * factor, z: a.z * factor });
export const dot = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vector3, b: Vector3): Vector3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
export const length = (a: Vector3): number => Math.hypot(a.x, a.y, a.z);

/** The direction of a vector; undefined where it has no length, so that nobody takes a zero for a direction. */
export function unit(a: Vector3): Vector3 | undefined {
  // of the very smallest numbers the inverse is no number
  const inverse = 1 / length(a);
  return inverse < Infinity ? scale(a, inverse) : undefined;
}

/** A direction whose part square to another is shorter than this says nothing about it. */
const NOTHING = 1e-6;

/**
 * A unit direction square to another unit direction: as near to `like` as it can be, and without one, or along one, any,
 * always the same.
 */
export function squareTo(direction: Vector3, like: Vector3 | null = null): Vector3 {
  const beside = like === null ? undefined : subtract(like, scale(direction, dot(like, direction)));
  if (beside !== undefined && length(beside) > NOTHING) return unit(beside) ?? beside;
  const axis = Math.abs(direction.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  return unit(cross(axis, direction)) ?? axis;
}

/** Angle between two directions [rad], good near 0 and π as well (atan2, not acos). */
export const angleBetween = (a: Vector3, b: Vector3): number => Math.atan2(length(cross(a, b)), dot(a, b));

/** Sine and cosine of an angle [rad]; those of quarter turns are exact, so that square frames stay square. */
export function sineAndCosine(angle: number): { sine: number; cosine: number } {
  const quarter = angle / (Math.PI / 2);
  if (!Number.isInteger(quarter)) return { sine: Math.sin(angle), cosine: Math.cos(angle) };
  const step = ((quarter % 4) + 4) % 4;
  return { sine: [0, 1, 0, -1][step] ?? 0, cosine: [1, 0, -1, 0][step] ?? 1 };
}

/**
 * Turns a vector about a unit axis, right-handed (Rodrigues).
 *
 * @param angle [rad]
 */
export function rotate(a: Vector3, axis: Vector3, angle: number): Vector3 {
  const { sine, cosine } = sineAndCosine(angle);
  const along = scale(axis, dot(axis, a) * (1 - cosine));
  return add(add(scale(a, cosine), scale(cross(axis, a), sine)), along);
}
