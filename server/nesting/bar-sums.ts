import type { Aim } from './aim.ts';

/** The most steps that sums are listed for, and for all kinds of bar; more would take longer than they help. Our own choice. */
const MOST_STEPS = 1_000_000;
const MOST_FOR_ALL = 20_000_000;

/** What bars can come to at all: a bound may be raised to the next sum of whole bars. */
export type BarSums = {
  /** Two sums that differ do so by this much or more; 0: all bars cost nothing. */
  readonly step: number;
  /** The least sum that is no less than a bound, roundings of the solver aside. */
  readonly from: (bound: number) => number;
};

/** The largest number that divides all of these. */
export const commonStep = (values: readonly number[]): number =>
  values.reduce((step, value) => {
    let [a, b] = [step, value];
    while (b > 0) [a, b] = [b, a % b];
    return a;
  }, 0);

/** The sums of bars up to `most`. */
export function barSums({ task, costs }: Aim, most: number): BarSums {
  const step = commonStep(costs);
  const steps = step === 0 ? 0 : Math.floor(most / step);
  const isSum =
    steps > MOST_STEPS || steps * task.bars.length > MOST_FOR_ALL || step === 0
      ? null
      : listed(
          task.bars.map(({ count }) => count),
          costs,
          step,
          steps,
        );
  return {
    step,
    from(bound) {
      let next = Math.max(0, Math.ceil(bound / step - 1e-6 - 1e-9 * Math.abs(bound / step)));
      while (isSum !== null && next < steps && isSum[next] === 0) next += 1;
      return next * step;
    },
  };
}

/** For each number of steps up to the last, whether bars can come to it. */
function listed(counts: readonly (number | null)[], costs: readonly number[], step: number, last: number): Uint8Array {
  const isSum = new Uint8Array(last + 1);
  isSum[0] = 1;
  costs.forEach((cost, bar) => {
    const size = cost / step;
    if (size === 0) return;
    const most = counts[bar] ?? Infinity;
    // how many bars of this kind a sum needs at least
    const needed = new Float64Array(last + 1).fill(Infinity);
    for (let sum = 0; sum <= last; sum += 1) {
      if (isSum[sum] === 1) needed[sum] = 0;
      else if (sum >= size) needed[sum] = (needed[sum - size] ?? Infinity) + 1;
      if ((needed[sum] ?? Infinity) <= most) isSum[sum] = 1;
    }
  });
  return isSum;
}
