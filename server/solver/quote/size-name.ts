import type { CutPiece } from '../../plan/stock.ts';

/** What tells sizes of tube apart on a quote: outside diameter × wall [mm] and grade. */
export const sizeName = ({
  outsideDiameter,
  wall,
  grade,
}: Pick<CutPiece, 'outsideDiameter' | 'wall' | 'grade'>): string =>
  `${String(outsideDiameter)} × ${String(wall)} ${grade}`;
