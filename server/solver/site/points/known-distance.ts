import { length, subtract, type Vector3 } from '../../geometry/vector.ts';

/** How far a place is from a point that is known, by tape [mm], and the accuracy of that, ±. */
export type KnownDistance = { readonly from: Vector3; readonly distance: number; readonly accuracy: number };

/** Measured less what it is at a place [mm]. */
export const residualAt = (place: Vector3, { from, distance }: KnownDistance): number =>
  distance - length(subtract(place, from));

/** Root of the sum of the squared residuals, each in its own accuracy. */
export const misfitAt = (place: Vector3, known: readonly KnownDistance[]): number =>
  Math.hypot(...known.map((one) => residualAt(place, one) / one.accuracy));
