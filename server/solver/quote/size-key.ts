import type { QuoteLine } from '../../plan/quote.ts';
import type { CutPiece } from '../../plan/stock.ts';

type Sized = Pick<CutPiece, 'outsideDiameter' | 'wall' | 'grade'>;

/** What tells lines of several sizes of tube apart; a person reads their size. */
export const sizeKey = ({ outsideDiameter, wall, grade }: Sized): string =>
  `${String(outsideDiameter)} × ${String(wall)} ${grade}`;

export const sizeOf = ({ outsideDiameter, wall, grade }: Sized): NonNullable<QuoteLine['size']> => ({
  outsideDiameter,
  wall,
  grade,
});
