import type { PlanPiece } from '../../plan/frame.ts';
import { RADIANS } from './angle.ts';
import { arcPiece, straightPiece, type Centreline, type Piece } from './centreline.ts';
import { cross, ORIGIN, scale, subtract, unit } from './vector.ts';

/** Pieces as the Plan shows them, as a centreline again; a piece without length has no direction and is left out. */
export function fromPlanPieces(shown: readonly PlanPiece[]): Centreline {
  const pieces = shown.flatMap((one): Piece[] => {
    const { kind, from: start, length } = one;
    if (kind === 'straight') {
      const direction = unit(subtract(one.to, start));
      return direction === undefined ? [] : [straightPiece({ start, direction, length })];
    }
    const { normal, radius, centre, made } = one;
    const direction = unit(cross(normal, scale(subtract(start, centre), 1 / radius))) ?? ORIGIN;
    return [arcPiece({ start, direction, normal, radius, angle: one.angle * RADIANS, made })];
  });
  return { pieces, length: pieces.reduce((sum, piece) => sum + piece.length, 0) };
}
