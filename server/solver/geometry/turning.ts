import { sineAndCosine, type Vector3 } from './vector.ts';

/** A turn about a fixed line, right-handed, from a first angle to a last one [mm, rad]; the axis is a unit vector. */
export type Turning = {
  readonly about: Vector3;
  readonly axis: Vector3;
  readonly from: number;
  readonly to: number;
};

type Line = Pick<Turning, 'about' | 'axis'>;

// all by coordinates and without vectors between: a search for the least gap asks for them thousands of times

/** Where a point is after a turn. */
export function turnedAbout(point: Vector3, { about, axis }: Line, angle: number): Vector3 {
  if (angle === 0) return point;
  const { sine, cosine } = sineAndCosine(angle);
  const [x, y, z] = [point.x - about.x, point.y - about.y, point.z - about.z];
  const along = (x * axis.x + y * axis.y + z * axis.z) * (1 - cosine);
  return {
    x: about.x + cosine * x + sine * (axis.y * z - axis.z * y) + along * axis.x,
    y: about.y + cosine * y + sine * (axis.z * x - axis.x * z) + along * axis.y,
    z: about.z + cosine * z + sine * (axis.x * y - axis.y * x) + along * axis.z,
  };
}

/** What a turn by no more than an angle either way does to a point at the most [mm]. */
export type Turned = {
  /** How far it moves. */
  readonly moves: number;
  /** How far it goes against the direction. */
  readonly against: number;
};

/**
 * How far a point goes, and how far against a direction, while it turns by no more than an angle either way: a turn by δ
 * moves it by sin δ (w × e) − (1 − cos δ) e, with e from the line square to it.
 *
 * @param way unit direction
 * @param angle 0 … π/2 [rad]
 * @param off how far the point itself may be from there [mm]
 */
export function mostTurned(
  point: Vector3,
  { about, axis }: Line,
  { way, angle, off = 0 }: { readonly way: Vector3; readonly angle: number; readonly off?: number },
): Turned {
  const [x, y, z] = [point.x - about.x, point.y - about.y, point.z - about.z];
  const along = x * axis.x + y * axis.y + z * axis.z;
  const [u, v, w] = [x - along * axis.x, y - along * axis.y, z - along * axis.z];
  const sideways =
    way.x * (axis.y * w - axis.z * v) + way.y * (axis.z * u - axis.x * w) + way.z * (axis.x * v - axis.y * u);
  const inward = Math.max(0, way.x * u + way.y * v + way.z * w + off);
  // 1 − cos δ = 2 sin² (δ / 2)
  const half = Math.sin(angle / 2);
  return {
    moves: 2 * Math.sqrt(u * u + v * v + w * w) * half,
    against: (Math.abs(sideways) + off) * Math.sin(angle) + 2 * inward * half * half,
  };
}
