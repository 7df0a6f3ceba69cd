import { length, scale, type Vector3 } from '../geometry/vector.ts';

/** A direction as typed that is shorter than this is none: it was left at nothing. */
const NO_DIRECTION = 1e-9;
/** A frame lies flat where nobody says how it is held: the purge tells it. */
const UPWARDS: Vector3 = { x: 0, y: 0, z: 1 };

/** Whether a vector as typed points anywhere. */
export const hasDirection = (typed: Vector3): boolean => length(typed) > NO_DIRECTION;

/** Unit vector that points up while a frame is held, from the direction as typed. */
export const heldUp = (typed: Vector3): Vector3 => (hasDirection(typed) ? scale(typed, 1 / length(typed)) : UPWARDS);
