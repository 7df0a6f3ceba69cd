import { length, scale, type Vector3 } from '../geometry/vector.ts';

/** A direction shorter than this is none: it comes from rounding [of the length typed]. */
const NO_DIRECTION = 1e-9;
/** A frame lies flat where nobody says how it is held: the purge tells it. */
const UPWARDS: Vector3 = { x: 0, y: 0, z: 1 };

/** Unit vector that points up while a frame is held, from the direction as typed. */
export function heldUp(typed: Vector3): Vector3 {
  const size = length(typed);
  return size > NO_DIRECTION ? scale(typed, 1 / size) : UPWARDS;
}
