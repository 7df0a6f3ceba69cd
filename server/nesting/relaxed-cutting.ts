import { columnsOf, cutsOf, rowsOf, worthsOf, type Aim, type Worths } from './aim.ts';
import { keyOf, roomsOf, weightsOf, type Cut, type Pattern } from './cutting-task.ts';
import { bestFilling } from './fillings.ts';
import type { LinearSolver } from './linear-solver.ts';

/** The best answer with parts of a bar allowed. */
export type Relaxed = {
  /** Patterns that came up on the way. */
  readonly patterns: Pattern[];
  /** How many of them, not whole. */
  readonly amounts: Cut[];
  readonly worths: Worths;
  /** What no answer comes below. */
  readonly bound: number;
  /** Whether no other pattern could better it. */
  readonly sure: boolean;
};

/** So often a filling is looked for, and so often where none was found in the first looks; our own choice. */
const LOOKS = [4000, 200_000];

/** A pattern that is better by less is no better: in steps, and beside the dearest bar. */
const NO_BETTER = { steps: 1e-6, share: 1e-9 };

/**
 * Solves a cutting task with parts of a bar allowed. Patterns come as they are needed: what the pieces are worth in the
 * best answer so far tells which filling of which bar would better it.
 *
 * Source: P. C. Gilmore, R. E. Gomory, A linear programming approach to the cutting-stock problem, Operations Research 9
 * (1961) 849–859, from memory; with bars of several kinds of which there may be few.
 *
 * @param started patterns of which an answer can be made
 * @returns null where the time did not even do for these
 */
export function relaxedCutting(
  aim: Aim,
  started: readonly Pattern[],
  {
    solver,
    secondsLeft,
    raise,
  }: {
    readonly solver: LinearSolver;
    readonly secondsLeft: () => number;
    /** Told what no answer comes below, as soon as that is known. */
    readonly raise: (bound: number) => void;
  },
): Relaxed | null {
  const { task } = aim;
  const limits = task.pieces.map(({ count }) => count);
  const columns = columnsOf(aim);
  const least = NO_BETTER.steps + NO_BETTER.share * Math.max(...aim.costs);
  // no answer has more bars than pieces, and each may be better by that much than its worths say
  const slack = least * limits.reduce((sum, count) => sum + count, 0);
  const patterns: Pattern[] = [...started];
  const known = new Set(patterns.map(keyOf));
  const program = solver.relaxation(rowsOf(aim));
  program.add(columns(patterns));
  let last: Relaxed | null = null;
  let bound = 0;
  try {
    for (;;) {
      const answer = program.solve(secondsLeft());
      if (answer === null) return last;
      const worths = worthsOf(aim, answer.worths);
      const asked = { aim, worths, least, isOver: () => secondsLeft() <= 0 };
      const isNew = ({ filling }: Priced, bar: number): boolean =>
        filling !== null && !known.has(keyOf({ bar, counts: filling.counts }));
      let priced: Priced[] = [];
      for (const looks of LOOKS) {
        priced = pricedBars(asked, looks);
        if (priced.some(isNew) || priced.every(({ sure }) => sure)) break;
      }
      // what is there already is better by rounding alone
      const better = priced.flatMap((one, bar): Pattern[] =>
        isNew(one, bar) && one.filling !== null ? [{ bar, counts: one.filling.counts }] : [],
      );
      const sure = better.length === 0 && priced.every((one) => one.sure);
      bound = Math.max(bound, (sure ? worths.total : boundOf(aim, worths, priced)) - slack);
      raise(bound);
      last = { patterns, amounts: cutsOf(patterns, answer.amounts), worths, bound, sure };
      if (better.length === 0 || secondsLeft() <= 0) return last;
      for (const pattern of better) known.add(keyOf(pattern));
      patterns.push(...better);
      program.add(columns(better));
    }
  } finally {
    program.end();
  }
}

/** The filling of a bar that is worth most. */
type Priced = ReturnType<typeof bestFilling>;

type Pricing = { readonly aim: Aim; readonly worths: Worths; readonly least: number; readonly isOver: () => boolean };

/** For each kind of bar the filling that betters the answer most, looked for so long. */
function pricedBars({ aim: { task }, worths, least, isOver }: Pricing, looks: number): Priced[] {
  const weights = weightsOf(task);
  const rooms = roomsOf(task);
  const choice = { values: worths.pieces, weights, limits: task.pieces.map(({ count }) => count) };
  return task.bars.map((_, bar) =>
    bestFilling(choice, rooms[bar] ?? 0, {
      above: (worths.bars[bar] ?? 0) + least,
      patience: { looks, isOver },
    }),
  );
}

/**
 * What no answer comes below while better patterns are still there: pieces are worth so much less that no filling of a bar
 * that may be bought at will is worth more than the bar; bars that there are few of cost so much more.
 *
 * Source: A. A. Farley, A note on bounding a class of linear programming problems, Operations Research 38 (1990) 922–923,
 * from memory; with the duals of bars that there are few of set anew.
 */
function boundOf({ task, costs, limit }: Aim, worths: Worths, priced: readonly Priced[]): number {
  const costOf = (bar: number): number => (costs[bar] ?? 0) + worths.limit * (limit?.costs[bar] ?? 0);
  const most = priced.map((one) => one.most);
  const share = task.bars.reduce((least, { count }, bar) => {
    const worth = most[bar] ?? 0;
    return count === null && worth > 0 ? Math.min(least, costOf(bar) / worth) : least;
  }, 1);
  const ofPieces = task.pieces.reduce((sum, { count }, piece) => sum + share * (worths.pieces[piece] ?? 0) * count, 0);
  const ofBars = task.bars.reduce(
    (sum, { count }, bar) => (count === null ? sum : sum + count * Math.min(0, costOf(bar) - share * (most[bar] ?? 0))),
    0,
  );
  return ofPieces + ofBars - worths.limit * (limit?.most ?? 0);
}
