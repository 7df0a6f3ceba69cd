import { columnsOf, cutsOf, rowsOf, worthsOf, type Aim, type Worths } from './aim.ts';
import { roomsOf, weightsOf, type Cut, type Pattern } from './cutting-task.ts';
import { bestFilling } from './fillings.ts';
import type { LinearSolver } from './linear-solver.ts';

/** The best answer with parts of a bar allowed. */
export type Relaxed = {
  /** Patterns that came up on the way. */
  readonly patterns: Pattern[];
  /** How many of them, not whole. */
  readonly amounts: Cut[];
  readonly worths: Worths;
  /** Whether no other pattern could better it: only then its total is a bound. */
  readonly sure: boolean;
};

/** A pattern that is better by less is no better; beside the dearest bar. */
const NO_BETTER = 1e-7;

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
  const least = NO_BETTER * Math.max(1, ...aim.costs);
  const patterns: Pattern[] = [...started];
  const program = solver.relaxation(rowsOf(aim));
  program.add(columns(patterns));
  let last: Relaxed | null = null;
  try {
    for (;;) {
      const answer = program.solve(secondsLeft());
      if (answer === null) return last;
      const worths = worthsOf(aim, answer.worths);
      let sure = true;
      const better = task.bars.flatMap((_, bar): Pattern[] => {
        const needed = (worths.bars[bar] ?? 0) + least;
        const found = bestFilling({ values: worths.pieces, weights, limits }, rooms[bar] ?? 0, needed);
        sure &&= found.sure;
        return found.filling === null ? [] : [{ bar, counts: found.filling.counts }];
      });
      last = {
        patterns,
        amounts: cutsOf(patterns, answer.amounts),
        worths,
        sure: sure && better.length === 0,
      };
      if (better.length === 0 || secondsLeft() <= 0) return last;
      patterns.push(...better);
      program.add(columns(better));
    }
  } finally {
    program.end();
  }
}
