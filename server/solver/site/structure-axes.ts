import type { Vector3 } from '../geometry/vector.ts';

/** The structure's own axes: x ahead, y to port (the left hand, looking ahead), z up. */
export const AHEAD: Vector3 = { x: 1, y: 0, z: 0 };
export const PORT: Vector3 = { x: 0, y: 1, z: 0 };
export const UPRIGHT: Vector3 = { x: 0, y: 0, z: 1 };
