import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import type { Centreline, Piece } from '../geometry/centreline.ts';
import { moved, turned, type RigidMotion } from '../geometry/rigid-motion.ts';

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

/** A centreline after a rigid motion. */
export function movedLine(line: Centreline, motion: RigidMotion): Centreline {
  const pieces = line.pieces.map((piece): Piece => {
    const start = moved(motion, piece.start);
    const direction = turned(motion, piece.direction);
    return piece.kind === 'straight'
      ? { kind: 'straight', start, direction, length: piece.length }
      : {
          kind: 'arc',
          start,
          direction,
          normal: turned(motion, piece.normal),
          radius: piece.radius,
          angle: piece.angle,
          made: piece.made,
          length: piece.length,
        };
  });
  return { pieces, length: line.length };
}
