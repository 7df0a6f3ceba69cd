import type { Centreline, Piece } from './centreline.ts';
import { moved, turned, type RigidMotion } from './rigid-motion.ts';

/** A piece of a centreline after a rigid motion. */
export function movedPiece(motion: RigidMotion, piece: Piece): Piece {
  const start = moved(motion, piece.start);
  const direction = turned(motion, piece.direction);
  if (piece.kind === 'straight') return { kind: 'straight', start, direction, length: piece.length };
  const { radius, angle, made, length } = piece;
  return { kind: 'arc', start, direction, normal: turned(motion, piece.normal), radius, angle, made, length };
}

/** A centreline after a rigid motion. */
export const movedLine = (motion: RigidMotion, line: Centreline): Centreline => ({
  pieces: line.pieces.map((piece) => movedPiece(motion, piece)),
  length: line.length,
});
