import { cross, dot, length, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { LaidHinge, LaidLeg } from '../laid-site.ts';

/** A foot and a head nearer than this are one place [mm]: the shortest length that can be typed. */
const NO_LENGTH = 0.001;

/** A leg that pushes this close past a hinge [mm] neither turns the frame nor sets its slope: our own choice. */
const LEAST_LEVER = 1;

/** A leg from foot to head: how long [mm] and which way, a unit vector. */
export type LegWay = { readonly length: number; readonly along: Vector3 };

/** @returns undefined where foot and head are one place */
export function legWay({ foot, head }: Pick<LaidLeg, 'foot' | 'head'>): LegWay | undefined {
  const way = subtract(head, foot);
  const apart = length(way);
  return apart < NO_LENGTH ? undefined : { length: apart, along: scale(way, 1 / apart) };
}

/**
 * Lever of a leg about a hinge [mm]: (h × (H − A)) · d, H the head, A a point of the hinge, h and d unit directions of
 * hinge and leg. It is how much longer the leg gets for a radian of right-handed turn, and what its push turns with.
 *
 * @returns undefined where it is too short to turn anything: the leg's line meets the hinge or runs along it
 */
export function leverOf(leg: Pick<LaidLeg, 'foot' | 'head'>, { at, axis }: LaidHinge): number | undefined {
  const along = legWay(leg)?.along;
  const lever = along === undefined ? 0 : dot(cross(axis, subtract(leg.head, at)), along);
  return Math.abs(lever) < LEAST_LEVER ? undefined : lever;
}
