import { add, cross, dot, length, rotate, scale, subtract, type Vector3 } from './vector.ts';

/** A turn about a fixed line, right-handed, from a first angle to a last one [mm, rad]; the axis is a unit vector. */
export type Turning = {
  readonly about: Vector3;
  readonly axis: Vector3;
  readonly from: number;
  readonly to: number;
};

type Line = Pick<Turning, 'about' | 'axis'>;

/** Where a point is after a turn. */
export const turnedAbout = (point: Vector3, { about, axis }: Line, angle: number): Vector3 =>
  angle === 0 ? point : add(about, rotate(subtract(point, about), axis, angle));

/** From the line square to a point. */
function armOf(point: Vector3, { about, axis }: Line): Vector3 {
  const away = subtract(point, about);
  return subtract(away, scale(axis, dot(axis, away)));
}

/** How far a turn by no more than an angle either way moves a point [mm], at the most; up to half a turn. */
export const mostMove = (point: Vector3, line: Line, angle: number): number =>
  2 * length(armOf(point, line)) * Math.sin(angle / 2);

/**
 * How far a point can go against a direction while it turns by no more than an angle either way [mm], at the most: a
 * turn by δ moves it by sin δ (w × e) − (1 − cos δ) e, with e from the line square to it.
 *
 * @param way unit direction
 * @param angle 0 … π/2 [rad]
 * @param off how far the point itself may be from there [mm]
 */
export function mostLoss(
  point: Vector3,
  line: Line,
  { way, angle, off = 0 }: { readonly way: Vector3; readonly angle: number; readonly off?: number },
): number {
  const arm = armOf(point, line);
  const sideways = Math.abs(dot(way, cross(line.axis, arm))) + off;
  const inward = Math.max(0, dot(way, arm) + off);
  return sideways * Math.sin(angle) + inward * (1 - Math.cos(angle));
}
