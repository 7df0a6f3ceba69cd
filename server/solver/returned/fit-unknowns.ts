import { Matrix } from 'ml-matrix';
import { leastSquares } from '../least-squares.ts';
import { poseOf, residualsAt, slopesAt, type FitProblem } from './fit-problem.ts';
import { solvedWithHold } from './information.ts';

/** The best frame for some readings: its unknowns, and at them the residuals and their slopes by unknowns in sizes. */
export type Fitted = {
  readonly unknowns: readonly number[];
  /** Of the readings, in accuracies; what a closed tube is off is not among them. */
  readonly residuals: readonly number[];
  readonly slopes: readonly Float64Array[];
};

/** Rounds of the library's search before the last steps. */
const ROUNDS = 1;
/** Last steps, until one moves nothing by more than this share of its size. */
const MOST_STEPS = 12;
const SETTLED = 1e-10;

/**
 * The deviations that explain the readings best. First with each deviation held weakly at the wanted frame, so that few
 * readings have one answer; then step by step without that hold (Levenberg's step with unit damping, from where the last
 * one ended), so that the hold leaves no trace where readings decide. Directions that no reading sees stay as wanted.
 */
export function fitUnknowns(problem: FitProblem): Fitted {
  const [first, ...others] = startsFor(problem).map((start) => lastSteps(problem, held(problem, start)));
  if (first === undefined)
    return lastSteps(
      problem,
      problem.sizes.map(() => 0),
    );
  // of two frames that explain the readings alike, the one that is nearer to the wanted one
  const costs = ({ residuals, unknowns }: Fitted) =>
    sumOfSquares(residuals) + sumOfSquares(unknowns.map((value, index) => value / (problem.sizes[index] ?? 1)));
  return others.reduce((best, one) => (costs(one) < costs(best) - SAME ? one : best), first);
}

/** The same from a frame that is near already: the one that fits all readings, for all of them but one. */
export const fitAgain = (problem: FitProblem, near: readonly number[]): Fitted =>
  lastSteps(problem, near.slice(0, problem.sizes.length));

/** Sums of squares this near are the same; rounding. */
const SAME = 1e-6;

/** Nearer to parallel than this a bevel does not say which way two tubes lean [degrees]; our own choice. */
const PARALLEL = 0.3;
/** Start of a search with every bend a little open or closed, in sizes; our own choice. */
const OPEN = 0.05;

/**
 * Where to start: at the wanted frame. A bevel on two parallel tubes reads the same whichever way they lean: where one was
 * read that is not parallel, with the bends a little open first, as springback leaves them, and then a little closed.
 */
function startsFor(problem: FitProblem): number[][] {
  const { measured, model, free, sizes, pose } = problem;
  const none = sizes.map(() => 0);
  const bevels = measured.filter(({ kind }) => kind === 'bevel');
  if (bevels.length === 0) return [none];
  const lines = model.wanted.members.map(({ centreline }) => centreline);
  const folded = bevels.some((one) => {
    const wanted = one.predict(lines, poseOf(problem, none)) ?? 90;
    return Math.min(wanted, 180 - wanted) < PARALLEL && Math.abs(wanted - one.value) > one.accuracy / 2;
  });
  if (!folded) return [none];
  const bent = (by: number) =>
    none.map((_, index) => {
      const leans = pose === null || index < free.length ? model.parameters[free[index] ?? -1]?.what : undefined;
      return leans === 'angle' || leans === 'turn-z' ? by * (sizes[index] ?? 1) : 0;
    });
  return [bent(-OPEN), bent(OPEN)];
}

/** The library's search, with each deviation held weakly. */
function held(problem: FitProblem, start: readonly number[]): readonly number[] {
  const { sizes, lows } = problem;
  if (start.every((one) => one === 0) && residualsAt(problem, start).every((one) => Math.abs(one) < 1e-9)) return start;
  const shares = (values: readonly number[]) => values.map((value, index) => value / (sizes[index] ?? 1));
  const found = leastSquares(
    sizes.map((size, index) => {
      const low = lows[index] ?? Number.NEGATIVE_INFINITY;
      const at = start[index] ?? 0;
      return Number.isFinite(low) ? { start: at, size, low } : { start: at, size };
    }),
    (values) => [...residualsAt(problem, values), ...shares(values)],
    (values) => {
      const rows = slopesAt(problem, values).map((row) => row.map((slope, index) => slope / (sizes[index] ?? 1)));
      const holds = sizes.map((size, index) => {
        const row = new Float64Array(sizes.length);
        row[index] = 1 / size;
        return row;
      });
      return [...rows, ...holds];
    },
    ROUNDS,
  );
  return found.values;
}

function lastSteps(problem: FitProblem, start: readonly number[]): Fitted {
  const { sizes, lows, measured } = problem;
  let unknowns = start;
  let residuals = residualsAt(problem, unknowns);
  let slopes = slopesAt(problem, unknowns);
  let cost = sumOfSquares(residuals);
  for (let steps = 0; steps < MOST_STEPS; steps += 1) {
    const step = stepFrom(slopes, residuals, sizes.length);
    const largest = step.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
    if (!(largest > SETTLED)) break;
    const from = unknowns;
    const next = step.map((one, index) =>
      Math.max((from[index] ?? 0) + one * (sizes[index] ?? 1), lows[index] ?? Number.NEGATIVE_INFINITY),
    );
    const after = residualsAt(problem, next);
    const newCost = sumOfSquares(after);
    if (newCost > cost * (1 + 1e-9) + 1e-18) break;
    unknowns = next;
    residuals = after;
    cost = newCost;
    slopes = slopesAt(problem, unknowns);
  }
  return { unknowns, residuals: residuals.slice(0, measured.length), slopes };
}

/** −(JᵀJ + 1)⁻¹ Jᵀ r, in sizes. */
function stepFrom(slopes: readonly Float64Array[], residuals: readonly number[], count: number): number[] {
  const right = new Array<number>(count).fill(0);
  for (const [row, slope] of slopes.entries()) {
    const residual = residuals[row] ?? 0;
    if (residual !== 0)
      for (let index = 0; index < count; index += 1)
        right[index] = (right[index] ?? 0) - (slope[index] ?? 0) * residual;
  }
  if (count === 0) return [];
  return solvedWithHold(slopes, Matrix.columnVector(right)).to1DArray();
}

export const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, one) => sum + one * one, 0);
