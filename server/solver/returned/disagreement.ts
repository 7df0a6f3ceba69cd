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

/** Readings that are left out one after the other, the furthest off first; our own choice. */
const SUSPECTS = 4;

/**
 * Finds the one reading that disagrees: of those that are off by more than three (studentised) each is left out in turn,
 * since where a frame is far off its residuals alone point at the wrong one. It is the one without which the others
 * agree, and clearly better than without any other. Null where there is none, or where more than one would explain it.
 */
export function disagreementIn(problem: FitProblem, fitted: Fitted, knowledge: Knowledge): Disagreement | null {
  const spread = studentised(fitted, knowledge).map((one) => Math.abs(one ?? 0));
  const suspects = [...spread.keys()]
    .filter((place) => (spread[place] ?? 0) >= SUSPECT)
    .sort((a, b) => (spread[b] ?? 0) - (spread[a] ?? 0))
    .slice(0, SUSPECTS);
  const left = suspects.map((place) => leftOut(problem, fitted, place)).sort((a, b) => a.cost - b.cost);
  const [best, next] = left;
  if (best === undefined || (next !== undefined && next.cost - best.cost < CLEARLY)) return null;
  const spare = problem.measured.length - 1 - knowledge.decided;
  if (misfitOver(best.fitted.residuals, Math.round(spare)) > AGREE) return null;
  const { place, without } = best;
  const lines = layFrame(without.model, parametersOf(without, best.fitted.unknowns)).map(({ line }) => line);
  const pose = without.pose === null ? UNMOVED : poseOf(without, best.fitted.unknowns);
  const ought = problem.measured[place]?.predict(lines, pose);
  return ought === undefined ? null : { place, ought, off: spread[place] ?? 0, problem: without, fitted: best.fitted };
}

/** The fit without one of the readings, and what it leaves. */
function leftOut(problem: FitProblem, fitted: Fitted, place: number) {
  const others = problem.measured.filter((_, index) => index !== place);
  const without = fitProblem(problem.model, others, others.some(({ posed }) => posed) ? problem.pose : null);
  const again = fitAgain(without, fitted.unknowns);
  return { place, without, fitted: again, cost: sumOfSquares(again.residuals) };
}
