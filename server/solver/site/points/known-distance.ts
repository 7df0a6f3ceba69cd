import { length, subtract, type Vector3 } from '../../geometry/vector.ts';

/** How far a place is from a point that is known, by tape [mm], and the accuracy of that, ±. */
export type KnownDistance = { readonly from: Vector3; readonly distance: number; readonly accuracy: number };

/** Measured less what it is at a place [mm]. */
export const residualAt = (place: Vector3, { from, distance }: KnownDistance): number =>
  distance - length(subtract(place, from));

/** Sum of the squared residuals, each in its own accuracy. */
export function squaresAt({ x, y, z }: Vector3, known: readonly KnownDistance[]): number {
  let sum = 0;
  // the heart of every search: a plain root is ten times as quick as a hypotenuse that minds overflow
  for (const { from, distance, accuracy } of known) {
    const size = Math.sqrt((x - from.x) ** 2 + (y - from.y) ** 2 + (z - from.z) ** 2);
    sum += ((size - distance) / accuracy) ** 2;
  }
  return sum;
}
