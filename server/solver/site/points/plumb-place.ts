import { add, cross, dot, length, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import { AHEAD } from '../structure-axes.ts';

/** A structure that stands on its end within this has no level way ahead [rad]: rounding. */
const ON_END = 1e-6;

/** Level ahead and level to port as they are seen from above, unit vectors in the structure's axes, and up by gravity. */
type LevelAxes = { readonly ahead: Vector3; readonly port: Vector3; readonly up: Vector3 };

/**
 * The level axes: ahead without its part along plumb, x_h = unit(x − (x·u) u), and y_h = u × x_h.
 *
 * @param up by gravity, a unit vector in the structure's axes
 * @returns undefined where ahead is plumb
 */
export function levelAxes(up: Vector3): LevelAxes | undefined {
  const flat = subtract(AHEAD, scale(up, dot(AHEAD, up)));
  const size = length(flat);
  if (size < ON_END) return undefined;
  const ahead = scale(flat, 1 / size);
  return { ahead, port: cross(up, ahead), up };
}

/** P = A + a x_h + b y_h + c u [mm]. */
export const plumbPlace = (
  from: Vector3,
  { ahead, port, up }: { readonly ahead: number; readonly port: number; readonly up: number },
  axes: LevelAxes,
): Vector3 => add(add(from, scale(axes.ahead, ahead)), add(scale(axes.port, port), scale(axes.up, up)));
