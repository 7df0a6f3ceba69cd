import jstat from 'jstat';
import { Matrix, QrDecomposition } from 'ml-matrix';

/** A straight line y = at0 + slope x through points by least squares. */
export type StraightLineFit = {
  readonly at0: number;
  readonly slope: number;
  /** Standard deviation of the points about the line, n − 2 degrees of freedom; undefined where two points leave none. */
  readonly residual: number | undefined;
  /** ± of the line at x for a ± of 1 in each y: √(1/n + (x − x̄)² / Σ(x − x̄)²). */
  readonly standing: (x: number) => number;
  /** ± of the line at x, 95 %, by Student's t; undefined where two points leave no residual. */
  readonly confidence: (x: number) => number | undefined;
};

/** Two sides of 95 %. */
const UPPER = 0.975;

/**
 * Least squares by QR decomposition (ml-matrix); the t quantile is jstat's. Confidence of a fitted line: Draper &
 * Smith, Applied Regression Analysis, 1.4 (from memory).
 *
 * @returns undefined where there are fewer than two different x
 */
export function fitStraightLine(
  points: readonly { readonly x: number; readonly y: number }[],
): StraightLineFit | undefined {
  const count = points.length;
  const mean = points.reduce((sum, { x }) => sum + x, 0) / count;
  const spread = points.reduce((sum, { x }) => sum + (x - mean) ** 2, 0);
  if (!(spread > 0)) return undefined;
  // about the mean the two columns are square to each other, which keeps the figures exact
  const design = new Matrix(points.map(({ x }) => [1, x - mean]));
  const solved = new QrDecomposition(design).solve(Matrix.columnVector(points.map(({ y }) => y)));
  const level = solved.get(0, 0);
  const slope = solved.get(1, 0);
  const standing = (x: number): number => Math.sqrt(1 / count + (x - mean) ** 2 / spread);
  const squares = points.reduce((sum, { x, y }) => sum + (y - level - slope * (x - mean)) ** 2, 0);
  const residual = count > 2 ? Math.sqrt(squares / (count - 2)) : undefined;
  const factor = residual === undefined ? undefined : residual * jstat.jStat.studentt.inv(UPPER, count - 2);
  return {
    at0: level - slope * mean,
    slope,
    residual,
    standing,
    confidence: (x) => (factor === undefined ? undefined : factor * standing(x)),
  };
}
