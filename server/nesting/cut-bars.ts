import type { Aim } from './aim.ts';
import { commonStep } from './bar-sums.ts';
import { sumOver, trimmedCuts, type Cut, type CuttingTask } from './cutting-task.ts';
import { laidGreedily, leastOf } from './laid-greedily.ts';
import { leastCutting, type Least, type Search } from './least-cutting.ts';
import { materialBound } from './material-bound.ts';
import type { LinearSolver } from './linear-solver.ts';

/** How the pieces of one size are cut. */
export type CutBars = {
  readonly cuts: readonly Cut[];
  /** What the bars cost, their length, and what neither can come below. */
  readonly cost: number;
  readonly costBound: number;
  readonly length: number;
  readonly lengthBound: number;
};

/** So much of the time may go into the first answer; our own choice. */
const FOR_FIRST = 0.1;

/** So much of the time may go into the cost before the length of the bars is looked at; our own choice. */
const FOR_COST = 0.8;

/**
 * Bars that do, laid at once: what the search begins with. null where there are too few bars.
 *
 * @param isOver once it is, the answer that is there does
 */
export function firstCuts(task: CuttingTask, isOver: () => boolean): CutBars | null {
  const costOf = (bar: number): number => task.bars[bar]?.cost ?? 0;
  const answers = laidGreedily(task, isOver).map((cuts) => trimmedCuts(task, cuts));
  const cuts = leastOf(answers, costOf);
  if (cuts === null) return null;
  const length = sumOver(cuts, (bar) => task.bars[bar]?.length ?? 0);
  const cost = sumOver(cuts, costOf);
  const bound = materialBound({ task, costs: task.bars.map((bar) => bar.cost), limit: null });
  // costs are whole, and what adding up alone has put on top is none
  return { cuts, cost, costBound: Math.min(cost, Math.ceil(bound * (1 - 1e-9) - 1e-6)), length, lengthBound: 0 };
}

/**
 * The cheapest bars for some pieces, and of bars that cost as much the shortest together.
 *
 * @returns null where there are too few bars
 */
export function cutBars(
  task: CuttingTask,
  search: {
    readonly solver: LinearSolver;
    readonly secondsLeft: () => number;
    readonly report: (best: CutBars) => void;
  },
): CutBars | null {
  const lengthOf = (bar: number): number => task.bars[bar]?.length ?? 0;
  const begun = search.secondsLeft();
  const first = firstCuts(task, () => search.secondsLeft() < begun * (1 - FOR_FIRST))?.cuts ?? null;
  if (first === null) return null;
  // numbers as small as may be: the solver reckons with parts of them
  const step = commonStep(task.bars.map(({ length }) => length));
  const told = (cost: Least, length?: Least): CutBars => ({
    cuts: (length ?? cost).cuts,
    cost: cost.value,
    costBound: cost.bound,
    length: sumOver((length ?? cost).cuts, lengthOf),
    lengthBound: (length?.bound ?? 0) * step,
  });
  const { solver, secondsLeft } = search;
  const started = secondsLeft();
  const forCost: Search = {
    solver,
    secondsLeft: () => secondsLeft() - started * (1 - FOR_COST),
    report: (least) => search.report(told(least)),
  };
  const costAim = { task, costs: task.bars.map(({ cost }) => cost), limit: null };
  const cost = leastCutting(costAim, first, forCost);
  if (cost.bound < cost.value) return told(cost);
  if (lengthFollows(task, step)) return { ...told(cost), lengthBound: sumOver(cost.cuts, lengthOf) };
  const lengthAim: Aim = {
    task,
    costs: task.bars.map(({ length }) => length / step),
    limit: { costs: costAim.costs, most: cost.value },
  };
  const length = leastCutting(lengthAim, cost.cuts, {
    solver,
    secondsLeft,
    report: (least) => search.report(told(cost, least)),
  });
  return told(cost, length);
}

/** Whether bars that cost as much are always as long together. */
function lengthFollows({ bars }: CuttingTask, step: number): boolean {
  const [first] = bars;
  const inSteps = (length: number): number => length / step;
  return (
    first === undefined ||
    (first.cost > 0 && bars.every(({ cost, length }) => cost * inSteps(first.length) === inSteps(length) * first.cost))
  );
}
