import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { FitProblem } from './fit-problem.ts';
import type { Fitted } from './fit-unknowns.ts';
import { informationOf, leftWithHold } from './information.ts';

/** What the readings know about the unknowns, each counted in its size. */
export type Knowledge = {
  /** (JᵀJ + 1)⁻¹: what is left of each unknown's own size. */
  readonly left: Matrix;
  /** For each reading, the share of it that the fit gets from itself (the diagonal of the hat matrix). */
  readonly leverages: readonly number[];
  /** How many unknowns the readings decide: the trace of the hat matrix. */
  readonly decided: number;
};

export function knowledgeOf(problem: FitProblem, fitted: Fitted): Knowledge {
  const left = leftWithHold(fitted.slopes, problem.sizes.length);
  const leverages = fitted.slopes.slice(0, problem.measured.length).map((slope) => quadratic(left, slope));
  return { left, leverages, decided: leverages.reduce((sum, one) => sum + one, 0) };
}

/** xᵀ M x. */
export function quadratic(matrix: Matrix, x: ArrayLike<number>): number {
  let sum = 0;
  for (let row = 0; row < x.length; row += 1) {
    const left = x[row] ?? 0;
    if (left === 0) continue;
    for (let column = 0; column < x.length; column += 1) sum += left * matrix.get(row, column) * (x[column] ?? 0);
  }
  return sum;
}

/**
 * One standard deviation of the unknowns along each independent direction. Along what the readings decide it is what
 * their accuracies leave. Along what they say less about than a deviation's own size, the weak hold at the wanted frame
 * would be all that is known, and its size is a choice of the program; there a deviation is as large as the machine
 * scatters, since nothing says that more went wrong there. Derived.
 *
 * @returns each of them in mm and rad
 */
export function directionsOfDoubt(problem: FitProblem, fitted: Fitted): number[][] {
  const { sizes, model, free } = problem;
  const count = sizes.length;
  if (count === 0) return [];
  const { eigenvectorMatrix: vectors, realEigenvalues: values } = new EigenvalueDecomposition(
    informationOf(fitted.slopes, count),
    { assumeSymmetric: true },
  );
  const inUnits = (direction: readonly number[], by: number): number[] =>
    direction.map((share, index) => share * by * (sizes[index] ?? 1));
  const decided: number[][] = [];
  const open: number[][] = [];
  const knows: number[] = [];
  for (const [index, value] of values.entries()) {
    const direction = vectors.getColumn(index);
    if (value >= 1) decided.push(inUnits(direction, 1 / Math.sqrt(value)));
    else {
      open.push(direction);
      knows.push(Math.max(0, value));
    }
  }
  if (open.length === 0) return decided;
  // scatter of the machine as information, in sizes; how the frame stood is nobody's scatter
  const scatter = sizes.map((size, index) => {
    const parameter = model.parameters[free[index] ?? -1];
    return parameter === undefined ? 1 : (size / Math.max(parameter.scatter, 1e-9)) ** 2;
  });
  const held = new Matrix(
    open.map((one, row) =>
      open.map((other, column) => {
        const shared = one.reduce((sum, share, index) => sum + share * (other[index] ?? 0) * (scatter[index] ?? 1), 0);
        return shared + (row === column ? (knows[row] ?? 0) : 0);
      }),
    ),
  );
  const spread = new EigenvalueDecomposition(held, { assumeSymmetric: true });
  const undecided = spread.realEigenvalues.map((value, index) => {
    const mix = spread.eigenvectorMatrix.getColumn(index);
    const direction = sizes.map((_, place) =>
      mix.reduce((sum, share, one) => sum + share * (open[one]?.[place] ?? 0), 0),
    );
    return inUnits(direction, 1 / Math.sqrt(Math.max(value, 1e-12)));
  });
  return [...decided, ...undecided];
}
