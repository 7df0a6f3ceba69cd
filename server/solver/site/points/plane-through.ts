import { cross, length, scale, subtract, type Vector3 } from '../../geometry/vector.ts';

/** A plane: a point of it [mm] and its unit normal. */
export type Plane = { readonly at: Vector3; readonly normal: Vector3 };

/** Points are in line where the middle one is off the line by no more than this share of its length: rounding. */
export const IN_LINE = 1e-6;

/**
 * The plane through three points, its normal out of the side from which they run anticlockwise: (p₂ − p₁) × (p₃ − p₁).
 *
 * @returns `offLine` where they lie in one line: how far the middle one is off it [mm]
 */
export function planeThrough(first: Vector3, second: Vector3, third: Vector3): Plane | { readonly offLine: number } {
  const square = cross(subtract(second, first), subtract(third, first));
  const doubleArea = length(square);
  const longest = Math.max(...[subtract(second, first), subtract(third, first), subtract(third, second)].map(length));
  // the height over the longest side is how far the middle one is off the line of the two others
  const offLine = longest > 0 ? doubleArea / longest : 0;
  return offLine <= IN_LINE * longest ? { offLine } : { at: first, normal: scale(square, 1 / doubleArea) };
}
