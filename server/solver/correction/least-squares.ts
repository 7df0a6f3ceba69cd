import { Matrix, solve } from 'ml-matrix';

/** Step of the numeric derivative, in the unit of each unknown times its scale: half the digits of a double. */
const STEP = 1e-6;
const MOST_STEPS = 30;

/** The sum of squares has settled where a step gains less than this share of it (residuals are in tolerances). */
const SETTLED = 1e-12;

/**
 * Nonlinear least squares by Gauss–Newton with Levenberg's damping; the linear algebra is ml-matrix's.
 *
 * @param unknowns start value and typical size of each unknown
 * @param residuals each already divided by its tolerance; the same count at every call
 * @returns the unknowns where the sum of squares stopped falling
 */
export function leastSquares(
  unknowns: readonly { readonly start: number; readonly size: number }[],
  residuals: (values: readonly number[]) => readonly number[],
): number[] {
  let values = unknowns.map((unknown) => unknown.start);
  let current = residuals(values);
  let cost = sumOfSquares(current);
  let damping = 1e-6;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const columns = unknowns.map((unknown, index) => {
      const moved = values.map((value, other) => (other === index ? value + STEP * unknown.size : value));
      return residuals(moved).map((residual, row) => (residual - (current[row] ?? 0)) / STEP);
    });
    const jacobian = new Matrix(columns).transpose();
    const transposed = jacobian.transpose();
    const normal = transposed.mmul(jacobian);
    const right = transposed.mmul(Matrix.columnVector(current.map((residual) => -residual)));
    let better = false;
    for (let attempt = 0; attempt < 8 && !better; attempt += 1) {
      const damped = normal.clone();
      for (let index = 0; index < unknowns.length; index += 1) {
        damped.set(index, index, damped.get(index, index) * (1 + damping) + 1e-18);
      }
      const change = solve(damped, right, true).to1DArray();
      const next = values.map((value, index) => value + (change[index] ?? 0) * (unknowns[index]?.size ?? 1));
      const nextResiduals = residuals(next);
      const nextCost = sumOfSquares(nextResiduals);
      if (nextCost <= cost) {
        better = cost - nextCost > SETTLED * (cost + 1);
        values = next;
        current = nextResiduals;
        cost = nextCost;
        damping = Math.max(damping / 10, 1e-12);
        if (!better) return values;
      } else {
        damping *= 100;
      }
    }
    if (!better) return values;
  }
  return values;
}

const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);
