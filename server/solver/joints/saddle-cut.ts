import { RADIANS } from '../geometry/angle.ts';

/** Saddles flatter than this are not cut with a wrap [rad]: 10°, common practice, no source. */
export const LEAST_AXIS_ANGLE = 10 * RADIANS;

/** A branch that sits on a straight main: main's outer radius and offset of the axes [mm], angle between them and generator [rad]. */
export type Saddle = { mainRadius: number; offset: number; axisAngle: number; generator: number };

/**
 * Ordinate of a saddle from the foot of the offset [mm], at one surface of the branch:
 * z(φ) = (r cos φ cos β + √(R² − (e + r sin φ)²)) / sin β, φ = 0 on the acute side. Derived.
 *
 * @returns undefined where the generator misses the main
 */
export function saddleOrdinate(cut: Saddle & { radius: number }): number | undefined {
  const across = cut.offset + cut.radius * Math.sin(cut.generator);
  // rounding of a generator that just touches the main's side
  if (Math.abs(across) > cut.mainRadius * (1 + 1e-12)) return undefined;
  const depth = Math.sqrt(Math.max(0, cut.mainRadius ** 2 - across ** 2));
  return (cut.radius * Math.cos(cut.generator) * Math.cos(cut.axisAngle) + depth) / Math.sin(cut.axisAngle);
}
