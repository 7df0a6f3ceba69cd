import type { Centreline, Piece } from './centreline.ts';
import { pieceEnd } from './slice.ts';
import { scale, type Vector3 } from './vector.ts';

/** Where points and directions go. `scale` is what every length is multiplied by; `handed` is −1 for a mirror. */
export type Move = {
  readonly point: (at: Vector3) => Vector3;
  readonly direction: (of: Vector3) => Vector3;
  readonly scale: number;
  readonly handed: 1 | -1;
};

/** The same centreline from its other end. */
export function reverseCentreline(line: Centreline): Centreline {
  const turned = line.pieces.map((piece): Piece => {
    const end = pieceEnd(piece);
    const back = { start: end.point, direction: scale(end.tangent, -1) };
    return piece.kind === 'straight' ? { ...piece, ...back } : { ...piece, ...back, normal: scale(piece.normal, -1) };
  });
  return { pieces: turned.reverse(), length: line.length };
}

/** A centreline moved, mirrored or scaled. The axis of an arc turns its sense in a mirror. */
export function transformCentreline(line: Centreline, move: Move): Centreline {
  const pieces = line.pieces.map((piece): Piece => {
    const moved = {
      start: move.point(piece.start),
      direction: move.direction(piece.direction),
      length: piece.length * move.scale,
    };
    if (piece.kind === 'straight') return { ...piece, ...moved };
    const normal = scale(move.direction(piece.normal), move.handed);
    return { ...piece, ...moved, normal, radius: piece.radius * move.scale };
  });
  return { pieces, length: line.length * move.scale };
}
