import type { PlanPiece } from '../../plan/frame.ts';
import type { Centreline } from './centreline.ts';
import { arcCentre, pieceEnd } from './slice.ts';

/** A centreline as the Plan shows it: degrees for angles, both ends and the centre of each arc. */
export const planPieces = (line: Centreline): PlanPiece[] =>
  line.pieces.map((piece) => {
    const to = pieceEnd(piece).point;
    if (piece.kind === 'straight') return { kind: 'straight', from: piece.start, to, length: piece.length };
    return {
      kind: 'arc',
      from: piece.start,
      to,
      centre: arcCentre(piece),
      normal: piece.normal,
      radius: piece.radius,
      angle: (piece.angle * 180) / Math.PI,
      length: piece.length,
      made: piece.made,
    };
  });
