import type { PlanPiece } from '../../plan/frame.ts';
import { DEGREES } from './angle.ts';
import type { Centreline, Piece } from './centreline.ts';
import { arcCentre, pieceEnd } from './slice.ts';

/** A piece as the Plan shows it: degrees for angles, both ends and the centre of an arc. */
function planPiece(piece: Piece): PlanPiece {
  const to = pieceEnd(piece).point;
  if (piece.kind === 'straight') return { kind: 'straight', from: piece.start, to, length: piece.length };
  return {
    kind: 'arc',
    from: piece.start,
    to,
    centre: arcCentre(piece),
    normal: piece.normal,
    radius: piece.radius,
    angle: piece.angle * DEGREES,
    length: piece.length,
    made: piece.made,
  };
}

/** A whole centreline as the Plan shows it. */
export const planPieces = ({ pieces }: Centreline): PlanPiece[] => pieces.map(planPiece);
