import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import type { Centreline } from '../geometry/centreline.ts';

/** A member with another centreline, and where they sit elsewhere with other ends. */
export const withLine = (
  member: MemberGeometry,
  centreline: Centreline,
  start: EndGeometry = member.start,
  finish: EndGeometry = member.finish,
): MemberGeometry => ({
  name: member.name,
  centreline,
  closed: member.closed,
  closing: member.closing,
  start,
  finish,
});
