import type { Band } from '../../plan/figure.ts';
import { DEGREES } from '../geometry/angle.ts';
import { angleBetween, cross, dot, length, ORIGIN, scale, unit, type Vector3 } from '../geometry/vector.ts';
import { EXACT } from './laid-site.ts';
import { sizeBand } from './size-band.ts';
import type { Read, SiteStudy } from './site-study.ts';

/** How far a unit direction rises against a unit upright [rad], −π/2 … π/2; by atan2, so that it is good near plumb. */
export const riseOf = (along: Vector3, up: Vector3): number => Math.atan2(dot(along, up), length(cross(along, up)));

/** The turn that takes one unit direction to another, the least, as a rotation vector [rad]; not for opposite ones. */
export const turnBetween = (from: Vector3, to: Vector3): Vector3 => {
  const axis = unit(cross(from, to));
  return axis === undefined ? ORIGIN : scale(axis, angleBetween(from, to));
};

/**
 * The ± of a rise, and of what it is off plumb [degrees]. A direction that passes level goes on below it, and one that
 * passes plumb leans to the other side: neither takes anything off the ±.
 *
 * @param read the direction and up, on any laying of the site
 */
export function riseBand(
  study: SiteStudy,
  read: Read<{ readonly direction: Vector3; readonly up: Vector3 }>,
): Band | null {
  const exact = read(study.laid, EXACT);
  // of the two ends the one that is higher now, so that it never lies opposite to up
  const end = exact !== undefined && dot(exact.direction, exact.up) < 0 ? -1 : 1;
  return sizeBand(study, (laid, off) => {
    const one = read(laid, off);
    return one && scale(turnBetween(one.up, scale(one.direction, end)), DEGREES);
  });
}
