import { CholeskyDecomposition, Matrix } from 'ml-matrix';

/** JᵀJ, in sizes. */
export function informationOf(slopes: readonly Float64Array[], count: number): Matrix {
  const sums = Array.from({ length: count }, () => new Float64Array(count));
  for (const slope of slopes) {
    for (let row = 0; row < count; row += 1) {
      const left = slope[row] ?? 0;
      const into = sums[row];
      if (left === 0 || into === undefined) continue;
      for (let column = 0; column < count; column += 1)
        into[column] = (into[column] ?? 0) + left * (slope[column] ?? 0);
    }
  }
  return new Matrix(sums.map((row) => Array.from(row)));
}

/** First share of each diagonal that is added where rounding ate the hold, and what it grows by; digits of a double. */
const FIRST_SHARE = 1e-14;
const GROWS = 100;

/**
 * Solves (JᵀJ + 1) x = right: every unknown held weakly at the wanted frame, in its size. Columns are scaled to one
 * another first; where the slopes are so steep that rounding leaves nothing of the hold, it is a share of each column's
 * own size instead, so that there is always an answer.
 *
 * @param right one row for each unknown
 */
export function solvedWithHold(slopes: readonly Float64Array[], right: Matrix): Matrix {
  const count = right.rows;
  if (count === 0) return right;
  const held = informationOf(slopes, count);
  const scales = Array.from({ length: count }, (_, index) => 1 / Math.sqrt(held.get(index, index) + 1));
  const scaleOf = (index: number): number => scales[index] ?? 1;
  for (let row = 0; row < count; row += 1) {
    held.set(row, row, held.get(row, row) + 1);
    for (let column = 0; column < count; column += 1)
      held.set(row, column, held.get(row, column) * (scaleOf(row) * scaleOf(column)));
  }
  let share = 0;
  let cholesky = new CholeskyDecomposition(held);
  // ends: a diagonal that outweighs its row is positive definite
  while (!cholesky.isPositiveDefinite()) {
    const more = share === 0 ? FIRST_SHARE : share * GROWS;
    for (let index = 0; index < count; index += 1) held.set(index, index, held.get(index, index) + more - share);
    share = more;
    cholesky = new CholeskyDecomposition(held);
  }
  const scaled = (one: Matrix): Matrix => {
    for (let row = 0; row < count; row += 1) one.mulRow(row, scaleOf(row));
    return one;
  };
  return scaled(cholesky.solve(scaled(right.clone())));
}

/** (JᵀJ + 1)⁻¹: what is left of each unknown's own size. */
export const leftWithHold = (slopes: readonly Float64Array[], count: number): Matrix =>
  solvedWithHold(slopes, Matrix.eye(count));
