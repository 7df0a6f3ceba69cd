import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { CholeskyDecomposition, Matrix } from 'ml-matrix';

/** One unknown: where the search starts, its typical size, and where it may not go beyond. */
export type Unknown = {
  readonly start: number;
  readonly size: number;
  readonly low?: number;
  readonly high?: number;
};

/** Residuals, each already divided by its tolerance; the same count at every call. */
export type Residuals = (values: readonly number[]) => ArrayLike<number>;

/** Derivatives of the residuals: one row for each residual, one column for each unknown. */
export type Derivatives = (values: readonly number[]) => readonly ArrayLike<number>[];

export type LeastSquares = {
  readonly values: number[];
  /** Sum of the squared residuals there. */
  readonly cost: number;
};

/** Step of a numeric derivative in sizes of an unknown: half the digits of a double. */
const STEP = 1e-6;

/** Damping of the first step; the residuals are in tolerances and the unknowns in their sizes, so all are of order 1. */
const DAMPING = 1e-3;

/** The search goes on in rounds of so many steps until a round gains less than this share. */
const ROUND = 2;
const SETTLED = 1e-10;
const MOST_ROUNDS = 24;

/**
 * Nonlinear least squares by Levenberg and Marquardt, as ml-levenberg-marquardt does it, with every unknown counted in
 * its own size. The library stops at a sum of squares or a count of steps only; here it is asked for a few steps at a
 * time, and is done where they gain nothing more.
 *
 * @param derivatives left out: differences
 */
export function leastSquares(
  unknowns: readonly Unknown[],
  residuals: Residuals,
  derivatives?: Derivatives,
  mostRounds = MOST_ROUNDS,
): LeastSquares {
  const start = unknowns.map((one) => one.start);
  const first = residuals(start);
  let cost = sumOfSquares(first);
  if (unknowns.length === 0 || first.length === 0) return { values: start, cost };
  const sizes = unknowns.map(({ size }) => size);
  const inSizes = (bound: 'low' | 'high', none: number) =>
    unknowns.map((one, index) => (one[bound] === undefined ? none : one[bound] / (sizes[index] ?? 1)));
  const minValues = inSizes('low', -Number.MAX_VALUE);
  const maxValues = inSizes('high', Number.MAX_VALUE);
  const asTyped = (scaled: ArrayLike<number>) => sizes.map((size, index) => (scaled[index] ?? 0) * size);
  // the library wants two points at the least: a residual that is nothing changes nothing
  const count = Math.max(first.length, 2);
  const x = Array.from({ length: count }, (_, index) => index);
  const y = x.map(() => 0);
  const model = (scaled: ArrayLike<number>) => {
    const all = residuals(asTyped(scaled));
    return (index: number) => all[index] ?? 0;
  };
  const slopes =
    derivatives === undefined
      ? undefined
      : (scaled: ArrayLike<number>) => {
          const rows = derivatives(asTyped(scaled));
          const none = sizes.map(() => 0);
          return (index: number) => {
            const row = rows[index];
            return row === undefined ? none : sizes.map((size, column) => (row[column] ?? 0) * size);
          };
        };
  let values = start.map((value, index) => value / (sizes[index] ?? 1));
  let damping = DAMPING;
  for (let round = 0; round < mostRounds; round += 1) {
    const found = levenbergMarquardt({ x, y }, model, {
      initialValues: values,
      minValues,
      maxValues,
      damping,
      gradientDifference: STEP,
      maxIterations: ROUND,
      errorTolerance: 0,
      ...(slopes === undefined ? {} : { jacobianFunction: slopes }),
    });
    const gain = cost - found.parameterError;
    if (found.parameterError <= cost) {
      values = [...found.parameterValues];
      cost = found.parameterError;
    }
    if (gain <= SETTLED * (1 + cost)) {
      // a round that gained nothing may have stepped too far: once more with care, then it is done
      if (damping >= 1 || gain >= 0) break;
      damping = 1;
    }
  }
  return { values: asTyped(values), cost };
}

/** Keeps the normal equations from being singular where an unknown moves nothing; far below what any residual weighs. */
const RIDGE = 1e-9;

/**
 * A few steps of Gauss and Newton, for a problem that is nearly linear and starts near its end: some ten times quicker
 * than the search above, and not for anything else. The normal equations are solved by ml-matrix (Cholesky). A step that
 * makes things worse is not taken.
 *
 * @param derivatives rows of residuals, columns of unknowns
 */
export function nearlyLinear(
  unknowns: readonly Unknown[],
  residuals: Residuals,
  derivatives: Derivatives,
  steps: number,
): LeastSquares {
  let values = unknowns.map(({ start }) => start);
  let now = residuals(values);
  let cost = sumOfSquares(now);
  for (let step = 0; step < steps; step += 1) {
    const change = gaussNewtonStep(unknowns, derivatives(values), now);
    if (change === undefined) break;
    const next = unknowns.map(({ low = -Infinity, high = Infinity }, index) =>
      Math.min(Math.max((values[index] ?? 0) + (change[index] ?? 0), low), high),
    );
    const then = residuals(next);
    const better = sumOfSquares(then);
    if (!(better < cost)) break;
    [values, now, cost] = [next, then, better];
  }
  return { values, cost };
}

/** Solves JᵀJ d = −Jᵀr with every unknown counted in its size; undefined where it cannot be solved. */
function gaussNewtonStep(
  unknowns: readonly Unknown[],
  rows: readonly ArrayLike<number>[],
  residuals: ArrayLike<number>,
): number[] | undefined {
  const count = unknowns.length;
  const normal = Matrix.zeros(count, count);
  const right = Matrix.zeros(count, 1);
  const filled: number[] = [];
  const scaled = new Float64Array(count);
  for (const [index, row] of rows.entries()) {
    filled.length = 0;
    for (let column = 0; column < count; column += 1) {
      const slope = row[column] ?? 0;
      if (slope === 0) continue;
      scaled[column] = slope * (unknowns[column]?.size ?? 1);
      filled.push(column);
    }
    const residual = residuals[index] ?? 0;
    for (const one of filled) {
      const slope = scaled[one] ?? 0;
      right.set(one, 0, right.get(one, 0) - slope * residual);
      for (const other of filled) normal.set(one, other, normal.get(one, other) + slope * (scaled[other] ?? 0));
    }
  }
  for (let index = 0; index < count; index += 1) normal.set(index, index, normal.get(index, index) + RIDGE);
  const cholesky = new CholeskyDecomposition(normal);
  if (!cholesky.isPositiveDefinite()) return undefined;
  const change = cholesky.solve(right);
  return unknowns.map(({ size }, index) => change.get(index, 0) * size);
}

const sumOfSquares = (values: ArrayLike<number>): number => {
  let sum = 0;
  for (let index = 0; index < values.length; index += 1) sum += (values[index] ?? 0) ** 2;
  return sum;
};
