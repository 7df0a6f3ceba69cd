import type { Check, Spot } from '../frame/frame-geometry.ts';
import type { Reference } from '../../job/quantities.ts';
import { length, subtract, type Vector3 } from '../geometry/vector.ts';

/** Where a spot of the frame as it came back ends up. */
export type Placer = (spot: Spot) => Vector3;

/** What a check's reference adds to its centre size [mm]. */
export const extraFor = (check: Check, reference: Reference): number =>
  reference === 'outside' ? check.outsideExtra : reference === 'inside' ? check.insideExtra : 0;

/** Size of a check with its spots moved, centre to centre [mm]. */
export const measureCheck = (check: Check, placed: Placer = (spot) => spot.point): number =>
  length(subtract(placed(check.to), placed(check.from)));
