// Runs in a process of its own: bars are sought for one task, what is found is told to the server, and that was it.
import { performance } from 'node:perf_hooks';
import { startLinearSolver } from './linear-solver.ts';
import type { NestingNews, NestingTask } from './nesting-task.ts';
import { seekBars } from './seek-bars.ts';

// nobody waits for bars whose server has gone
process.once('disconnect', () => process.exit());

process.once('message', (task: NestingTask) => {
  void startLinearSolver().then((solver) => {
    const started = performance.now();
    const secondsLeft = (): number => task.seconds - (performance.now() - started) / 1000;
    process.send?.({ kind: 'begun' } satisfies NestingNews);
    seekBars(task, { solver, secondsLeft, tell: (news) => process.send?.(news) });
  });
});
