import { columnsOf, cutsOf, rowsOf, type Aim } from './aim.ts';
import { barSums } from './bar-sums.ts';
import { keyOf, sumOver, trimmedCuts, type Cut, type Pattern } from './cutting-task.ts';
import { laidAsPlanned } from './laid-as-planned.ts';
import { laidNear } from './laid-greedily.ts';
import type { LinearSolver } from './linear-solver.ts';
import { materialBound } from './material-bound.ts';
import { nearPatterns } from './near-patterns.ts';
import { relaxedCutting, type Relaxed } from './relaxed-cutting.ts';

/**
 * How many patterns are looked at together, one after the other while the answer is not proven, and what part of the time
 * that is left goes into each; our own choice.
 */
const ROUNDS = [
  { most: 400, share: 0.15 },
  { most: 3000, share: 0.4 },
  { most: 20_000, share: 1 },
];

/** Bars that do, and what no bars can come below. */
export type Least = { readonly cuts: readonly Cut[]; readonly value: number; readonly bound: number };

export type Search = {
  readonly solver: LinearSolver;
  readonly secondsLeft: () => number;
  /** Told whenever a better answer or a better bound is there. */
  readonly report: (least: Least) => void;
};

/**
 * The least that an aim can come to: from an answer that does, a bound by parts of a bar, answers near to that one, and
 * then the best whole answer out of all patterns that a better one could be made of. Proven where value and bound are one.
 */
export function leastCutting(aim: Aim, begun: readonly Cut[], search: Search): Least {
  const costOf = (bar: number): number => aim.costs[bar] ?? 0;
  const sums = barSums(aim, sumOver(begun, costOf));
  const { step } = sums;
  let best: Least = { cuts: begun, value: sumOver(begun, costOf), bound: 0 };
  const improve = (cuts: readonly Cut[]): void => {
    const trimmed = trimmedCuts(aim.task, cuts);
    const value = sumOver(trimmed, costOf);
    if (value >= best.value || !isWithin(aim, trimmed)) return;
    best = { ...best, cuts: trimmed, value };
    search.report(best);
  };
  const raise = (bound: number): void => {
    const reached = bound >= best.value ? best.value : Math.min(best.value, sums.from(bound));
    if (reached <= best.bound) return;
    best = { ...best, bound: reached };
    search.report(best);
  };
  if (step === 0 || best.value === 0) return { ...best, bound: best.value };
  raise(materialBound(aim));
  if (best.bound >= best.value) return best;
  const isOver = (): boolean => search.secondsLeft() <= 0;
  const relaxed = relaxedCutting(aim, begun, { ...search, raise });
  if (relaxed === null) return best;
  if (best.bound < best.value) laidNear(aim.task, relaxed.amounts, { isOver, tell: improve });
  if (best.bound < best.value) for (const cuts of laidAsPlanned(aim, search)) improve(cuts);
  for (const { most, share } of ROUNDS) {
    if (best.bound >= best.value || search.secondsLeft() <= 0) break;
    const isLast = wholeAnswer(aim, { relaxed, step, most, share, best: () => best, improve, raise }, search);
    if (isLast) break;
  }
  return best;
}

/** Whether cuts keep the limit of an aim, and the number of bars that there are. */
function isWithin({ task, limit }: Aim, cuts: readonly Cut[]): boolean {
  const used = task.bars.map(() => 0);
  for (const { bar, times } of cuts) used[bar] = (used[bar] ?? 0) + times;
  return (
    task.bars.every(({ count }, bar) => (used[bar] ?? 0) <= (count ?? Infinity)) &&
    (limit === null || sumOver(cuts, (bar) => limit.costs[bar] ?? 0) <= limit.most)
  );
}

type Found = {
  readonly relaxed: Relaxed;
  readonly step: number;
  readonly most: number;
  readonly share: number;
  readonly best: () => Least;
  readonly improve: (cuts: readonly Cut[]) => void;
  readonly raise: (bound: number) => void;
};

/** Looks for a better answer out of the patterns that come near; true where looking at more of them is of no use. */
function wholeAnswer(
  aim: Aim,
  { relaxed, step, most, share, best, improve, raise }: Found,
  { solver, secondsLeft }: Search,
): boolean {
  const margin = best().value - step - relaxed.bound;
  const near = nearPatterns(aim, relaxed.worths, { margin, most, isOver: () => secondsLeft() <= 0 });
  const isAll = relaxed.sure && near.margin !== null && near.margin >= margin;
  const isLast = isAll || near.margin === null;
  const patterns = distinct([...relaxed.patterns, ...near.patterns, ...best().cuts]);
  const { amounts, bound } = solver.wholeNumbers({
    rows: rowsOf(aim),
    columns: columnsOf(aim)(patterns),
    within: step * (1 - 1e-4),
    seconds: (isLast ? 1 : share) * secondsLeft(),
    better: (found) => improve(cutsOf(patterns, found)),
  });
  if (amounts !== null) improve(cutsOf(patterns, amounts));
  // an answer with any other pattern comes to more than the margin above the relaxed one
  if (relaxed.sure) raise(Math.min(bound, isAll ? Infinity : relaxed.bound + Math.max(0, near.margin ?? 0)));
  return isLast;
}

function distinct(patterns: readonly Pattern[]): Pattern[] {
  const known = new Map(patterns.map((pattern) => [keyOf(pattern), pattern]));
  return [...known.values()].map(({ bar, counts }) => ({ bar, counts }));
}
