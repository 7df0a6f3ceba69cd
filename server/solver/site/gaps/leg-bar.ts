import type { HeadEnd } from '../../../job/leg.ts';
import { placeAt } from '../../geometry/centreline.ts';
import type { RoundBar } from '../../geometry/solid.ts';
import { add, cross, length, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, LaidLeg } from '../laid-site.ts';

/** The tube of a leg as it will stand: from its foot point to where it meets the surface of the tube that it carries. */
export type LegBar = { readonly leg: LaidLeg; readonly solid: RoundBar; readonly end: Vector3 };

/** A leg flatter on its tube than this sine is no saddle, which is told elsewhere; it keeps the division finite. */
const LEAST_SINE = 0.1;

/**
 * @param mainRadius of the tube that it carries [mm]
 * @returns undefined for a leg of which nothing is left
 */
export function legBar(leg: LaidLeg, end: HeadEnd, frame: LaidFrame, mainRadius: number): LegBar | undefined {
  const way = subtract(leg.head, leg.foot);
  const axis = unit(way);
  const line = frame.lines.find(({ name }) => name === leg.member)?.centreline;
  const tangent = line === undefined ? undefined : placeAt(line, leg.station)?.tangent;
  if (axis === undefined || tangent === undefined) return undefined;
  const takes = end.end === 'eye' ? end.takes : mainRadius / Math.max(LEAST_SINE, length(cross(axis, tangent)));
  const to = length(way) - takes;
  if (to <= 0) return undefined;
  const solid: RoundBar = {
    shape: 'cylinder',
    at: leg.foot,
    axis,
    radius: leg.outsideDiameter / 2,
    ends: { from: 0, to },
  };
  return { leg, solid, end: add(leg.foot, scale(axis, to)) };
}
