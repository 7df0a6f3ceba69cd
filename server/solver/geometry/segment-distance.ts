import { add, dot, length, scale, subtract, type Vector3 } from './vector.ts';

/** A straight stretch between two points [mm]. */
export type Segment = { readonly from: Vector3; readonly to: Vector3 };

const within = (share: number): number => Math.min(1, Math.max(0, share));

/**
 * Least distance between two segments [mm]. Exact: the common perpendicular where it meets both, else from an end.
 * Method as in Ericson, Real-Time Collision Detection (2005), section 5.1.9, from memory; checked against sampling.
 */
export function segmentDistance(a: Segment, b: Segment): number {
  const along = subtract(a.to, a.from);
  const other = subtract(b.to, b.from);
  const apart = subtract(a.from, b.from);
  const aa = dot(along, along);
  const bb = dot(other, other);
  const fromB = dot(other, apart);
  const fromA = dot(along, apart);
  if (aa === 0 && bb === 0) return length(apart);
  let s = 0;
  let t = 0;
  if (aa === 0) t = within(fromB / bb);
  else if (bb === 0) s = within(-fromA / aa);
  else {
    const ab = dot(along, other);
    const square = aa * bb - ab * ab;
    s = square > 0 ? within((ab * fromB - fromA * bb) / square) : 0;
    t = (ab * s + fromB) / bb;
    if (t < 0) s = within(-fromA / aa);
    else if (t > 1) s = within((ab - fromA) / aa);
    t = within(t);
  }
  return length(subtract(add(a.from, scale(along, s)), add(b.from, scale(other, t))));
}
