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
  /** What no answer comes below; 0 where the time did not do to say. */
  readonly bound: number;
  /** Whether no other pattern could better it. */
  readonly sure: boolean;
};

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
  { solver, secondsLeft }: { readonly solver: LinearSolver; readonly secondsLeft: () => number },
): Relaxed | null {
  const { task } = aim;
  const weights = weightsOf(task);
  const rooms = roomsOf(task);
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
  try {
    for (;;) {
      const answer = program.solve(secondsLeft());
      if (answer === null) return last;
      const worths = worthsOf(aim, answer.worths);
      let sure = true;
      const offered = task.bars.flatMap((_, bar): Pattern[] => {
        const needed = (worths.bars[bar] ?? 0) + least;
        const found = bestFilling({ values: worths.pieces, weights, limits }, rooms[bar] ?? 0, needed);
        sure &&= found.sure;
        return found.filling === null ? [] : [{ bar, counts: found.filling.counts }];
      });
      // what is there already is better by rounding alone
      const better = offered.filter((pattern) => !known.has(keyOf(pattern)));
      last = {
        patterns,
        amounts: cutsOf(patterns, answer.amounts),
        worths,
        bound: sure && better.length === 0 ? Math.max(0, worths.total - slack) : 0,
        sure: sure && better.length === 0,
      };
      if (better.length === 0 || secondsLeft() <= 0) return last;
      for (const pattern of better) known.add(keyOf(pattern));
      patterns.push(...better);
      program.add(columns(better));
    }
  } finally {
    program.end();
  }
}
