import type { Level, LevelSet } from '../../../job/level.ts';
import type { SolvedLevel } from '../laid-site.ts';
import { accuracyOf, saidOfUp } from './level-equations.ts';

/** Up has so many freedoms. */
const FREEDOMS = 2;

/**
 * How many times further the readings of a set scatter than their accuracies say: k = √(Σ (v / σ)² / (n − 2)), the root of
 * the reduced sum of squares, and 1 where that is less or where there are no more readings than it takes. Their
 * accuracies are widened by it, as is usual in least squares (Birge's ratio; from memory), so that a ± is never smaller
 * than what the readings disagree by.
 */
export function scatterOf({ readings }: LevelSet, level: Level, solved: SolvedLevel | null): number {
  if (solved === null) return 1;
  const spare = saidOfUp(readings.map(({ reading }) => ({ kind: reading }))) - FREEDOMS;
  if (spare <= 0) return 1;
  const squares = readings.reduce(
    (sum, reading, index) => sum + ((solved.residuals[index] ?? 0) / accuracyOf(reading, level)) ** 2,
    0,
  );
  return Math.max(1, Math.sqrt(squares / spare));
}
