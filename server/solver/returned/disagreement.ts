import { UNMOVED } from '../geometry/rigid-motion.ts';
import type { Knowledge } from './doubt.ts';
import { fitProblem, parametersOf, poseOf, type FitProblem } from './fit-problem.ts';
import { fitAgain, sumOfSquares, type Fitted } from './fit-unknowns.ts';
import { layFrame } from './lay-frame.ts';

/** Beyond this many standard deviations a reading is suspected; common practice. */
const SUSPECT = 3;
/** Without it the others must agree to this, in accuracies; common practice. */
const AGREE = 2;
/** The suspect must explain more than any other reading would, by so much of the sum of squares: two deviations, squared. */
const CLEARLY = 4;
/** A reading that alone decides something has nothing to be compared with. */
const LEAST_SHARE = 1e-4;

/** The reading that does not go with all the others. */
export type Disagreement = {
  readonly place: number;
  /** What the others say that it is, in its unit. */
  readonly ought: number;
  /** By how many standard deviations it stands off the others. */
  readonly off: number;
  /** The fit without it. */
  readonly problem: FitProblem;
  readonly fitted: Fitted;
};

/**
 * Residuals as they would be spread if all readings were good: rᵢ / √(1 − hᵢ). Null where a reading has nothing beside
 * it. Draper & Smith, Applied Regression Analysis, chapter 8; from memory.
 */
export const studentised = ({ residuals }: Fitted, { leverages }: Knowledge): (number | null)[] =>
  residuals.map((residual, index) => {
    const share = 1 - (leverages[index] ?? 1);
    return share < LEAST_SHARE ? null : residual / Math.sqrt(share);
  });

/** Root mean square of residuals over what is spare, in accuracies. */
export const misfitOver = (residuals: readonly number[], spare: number): number =>
  Math.sqrt(sumOfSquares(residuals) / Math.max(1, spare));

/**
 * Finds the one reading that disagrees: furthest off by studentised residuals and beyond three, clearly ahead of every
 * other one, and gone it leaves readings that agree. Null where there is none, or where more than one would explain it.
 */
export function disagreementIn(problem: FitProblem, fitted: Fitted, knowledge: Knowledge): Disagreement | null {
  const spread = studentised(fitted, knowledge).map((one) => Math.abs(one ?? 0));
  const suspects = [...spread.keys()].sort((a, b) => (spread[b] ?? 0) - (spread[a] ?? 0));
  const [place = -1, next = -1] = suspects;
  const [worst = 0, second = 0] = [spread[place], spread[next]];
  if (worst < SUSPECT || worst ** 2 - second ** 2 < CLEARLY) return null;
  const suspect = problem.measured[place];
  if (suspect === undefined) return null;
  const others = problem.measured.filter((_, index) => index !== place);
  const without = fitProblem(problem.model, others, others.some(({ posed }) => posed) ? problem.pose : null);
  const again = fitAgain(without, fitted.unknowns);
  const spare = problem.measured.length - 1 - knowledge.decided;
  if (misfitOver(again.residuals, Math.round(spare)) > AGREE) return null;
  const lines = layFrame(without.model, parametersOf(without, again.unknowns)).map(({ line }) => line);
  const ought = suspect.predict(lines, without.pose === null ? UNMOVED : poseOf(without, again.unknowns));
  return ought === undefined ? null : { place, ought, off: worst, problem: without, fitted: again };
}
