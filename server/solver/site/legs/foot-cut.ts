import type { FootEnd } from '../../../job/leg.ts';
import { angleBetween, dot, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { LaidLeg } from '../laid-site.ts';

/** What a foot takes off its leg [mm, rad]. */
export type FootCut = {
  readonly end: FootEnd['end'];
  /** Between the leg and the way out of the surface. */
  readonly tilt: number;
  /** At the middle of the tube; negative for a socket. */
  readonly takes: number;
  /** How far the long side of a mitre reaches beyond the middle: (D/2) tan τ; 0 for the others. */
  readonly reach: number;
  /** The generator of the long side, a unit vector square to the leg; undefined where it stands square on its surface. */
  readonly longSide: Vector3 | undefined;
  readonly welded: boolean;
};

/**
 * How a leg's foot is cut. A plate of thickness t lies flat on the surface, so it takes t / cos τ along the leg; a weld's
 * root gap stands along the leg. Mitred, generator φ ends at t / cos τ + g − (D/2) tan τ cos(φ − long side); cut square,
 * the low side touches: t / cos τ + g + (D/2) tan τ all round. Derived.
 *
 * A foot on its own, without a plate, is welded to what it stands on; one in a socket is not welded.
 *
 * @param along unit direction of the leg, from foot to head
 */
export function footCut(leg: LaidLeg, along: Vector3, end: FootEnd, gap: number): FootCut {
  const tilt = angleBetween(along, leg.surface);
  const longSide = unit(subtract(leg.surface, scale(along, dot(along, leg.surface))));
  const of = { end: end.end, tilt, longSide };
  if (end.end === 'socket') return { ...of, takes: -end.depth, reach: 0, welded: false };
  const side = (leg.outsideDiameter / 2) * Math.tan(tilt);
  const middle = end.plate / Math.cos(tilt) + gap;
  return end.end === 'mitre'
    ? { ...of, takes: middle, reach: side, welded: true }
    : { ...of, takes: middle + side, reach: 0, welded: true };
}
