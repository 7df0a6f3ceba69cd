import { cutBars, firstCuts } from './cut-bars.ts';
import type { LinearSolver } from './linear-solver.ts';
import type { NestingNews, NestingTask } from './nesting-task.ts';

/** So much of the time the first answers of all sizes may take; our own choice. */
const FOR_FIRST = 0.1;

/**
 * Seeks bars for every size of a task within its time, and tells how it goes. All sizes get an answer at once; then each
 * has its part of the time that is left.
 *
 * @param secondsLeft of the whole time
 */
export function seekBars(
  { sizes }: NestingTask,
  {
    solver,
    secondsLeft,
    tell,
  }: {
    readonly solver: LinearSolver;
    readonly secondsLeft: () => number;
    readonly tell: (news: NestingNews) => void;
  },
): void {
  const whole = secondsLeft();
  const possible = sizes.flatMap((task, size) => {
    const best = firstCuts(task, () => secondsLeft() < whole * (1 - FOR_FIRST));
    tell(best === null ? { kind: 'too-few', size } : { kind: 'best', size, best });
    return best === null ? [] : [{ task, size }];
  });
  possible.forEach(({ task, size }, index) => {
    const share = secondsLeft() / (possible.length - index);
    const kept = secondsLeft() - share;
    const best = cutBars(task, {
      solver,
      secondsLeft: () => secondsLeft() - kept,
      report: (found) => tell({ kind: 'best', size, best: found }),
    });
    if (best !== null) tell({ kind: 'best', size, best });
  });
  tell({ kind: 'done' });
}
