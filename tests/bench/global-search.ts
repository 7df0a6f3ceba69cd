import direct from 'ml-direct';
import { performance } from 'node:perf_hooks';
import { runInNewContext } from 'node:vm';
import type { SpliceProblem } from '../../server/solver/correction/splice/splice-problem.ts';
import { residualsOf } from '../../server/solver/correction/splice/splice-residuals.ts';
import { searchOf, stateAt } from '../../server/solver/correction/splice/splice-state.ts';

/** What a global optimiser found of one layout: the least cost, how often it looked, when for the last time, and how long it had [ms]. */
export type GlobalSearch = {
  readonly cost: number;
  readonly looks: number;
  readonly last: number;
  readonly time: number;
};

/** Boxes round where the bodies begin, which is where the solver begins too [mm, rad]. */
const SHIFT = 50;
const TURN = 0.05;

/** More rounds than there is ever time for. */
const ROUNDS = 100_000;

/** Ends a search from within: it is as good as it must be. */
class Done extends Error {}

/**
 * The same problem as solveSplice has, by DIRECT (Jones, Perttunen and Stuckman 1993) as ml-direct does it: until it is
 * as good as a cost, or has had its time.
 *
 * @param most [ms]
 */
export function searchGlobally(problem: SpliceProblem, enough: number, most: number): GlobalSearch {
  const search = searchOf(problem);
  const start = performance.now();
  let [looks, least, last] = [0, Infinity, 0];
  const cost = (given: ArrayLike<number>): number => {
    const values = Array.from(given);
    const found = residualsOf(search, stateAt(search, values), values).reduce((sum, one) => sum + one * one, 0);
    looks += 1;
    least = Math.min(least, found);
    last = performance.now() - start;
    if (least <= enough) throw new Done();
    // a logarithm changes no minimum, and is kinder to a search that compares boxes by their slopes
    return Math.log(found);
  };
  const sizes = search.freedoms.map(({ kind }) => (kind === 'shift' ? SHIFT : TURN));
  const low = [...sizes.map((size) => -size), ...problem.joints.map((joint) => joint.low - 1e-9)];
  const high = [...sizes, ...problem.joints.map((joint) => joint.high + 1e-9)];
  const work = () => direct(cost, low, high, { iterations: ROUNDS });
  try {
    // the library knows no clock, and its convex hull may go round for ever: whatever it does ends here
    runInNewContext('work()', { work }, { timeout: Math.ceil(most) });
  } catch (error) {
    // an error of another context is no Error of this one
    const isOver =
      typeof error === 'object' && error !== null && 'code' in error && error.code === 'ERR_SCRIPT_EXECUTION_TIMEOUT';
    if (!isOver && !(error instanceof Done)) throw error;
  }
  return { cost: least, looks, last, time: performance.now() - start };
}
