import type { Centreline, Piece } from './centreline.ts';
import { pieceEnd } from './slice.ts';
import { scale } from './vector.ts';

/** The same centreline from its other end. */
export function reverseCentreline(line: Centreline): Centreline {
  const turned = line.pieces.map((piece): Piece => {
    const end = pieceEnd(piece);
    const back = { start: end.point, direction: scale(end.tangent, -1) };
    return piece.kind === 'straight' ? { ...piece, ...back } : { ...piece, ...back, normal: scale(piece.normal, -1) };
  });
  return { pieces: turned.reverse(), length: line.length };
}
