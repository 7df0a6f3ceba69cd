import { expect } from 'vitest';
import { cutBars, type CutBars } from '../../server/nesting/cut-bars.ts';
import { roomsOf, weightsOf, type CuttingTask } from '../../server/nesting/cutting-task.ts';
import { startLinearSolver } from '../../server/nesting/linear-solver.ts';

const solver = await startLinearSolver();

/** The bars for a task, sought for some seconds at most; with every answer on the way. */
export function cut(task: CuttingTask, seconds = 20): { readonly best: CutBars; readonly told: CutBars[] } {
  const started = performance.now();
  const told: CutBars[] = [];
  const best = cutBars(task, {
    solver,
    secondsLeft: () => seconds - (performance.now() - started) / 1000,
    report: (found) => told.push(found),
  });
  if (best === null) throw new Error('There are too few bars.');
  expectCuttable(task, best);
  return { best, told };
}

export const barsIn = ({ cuts }: CutBars): number => cuts.reduce((sum, { times }) => sum + times, 0);

export const isProven = ({ cost, costBound, length, lengthBound }: CutBars): boolean =>
  cost === costBound && length === lengthBound;

/** Each piece exactly as often as it is wanted, no bar over its length, no more bars than there are, sums as told. */
export function expectCuttable(task: CuttingTask, { cuts, cost, length }: CutBars): void {
  const weights = weightsOf(task);
  const rooms = roomsOf(task);
  const given = task.pieces.map(() => 0);
  const used = task.bars.map(() => 0);
  for (const { bar, counts, times } of cuts) {
    expect(Number.isInteger(times) && times > 0).toBe(true);
    expect(counts.some((count) => count > 0)).toBe(true);
    expect(counts.reduce((sum, count, index) => sum + count * weights[index]!, 0)).toBeLessThanOrEqual(rooms[bar]!);
    counts.forEach((count, index) => (given[index]! += count * times));
    used[bar]! += times;
  }
  expect(given).toEqual(task.pieces.map(({ count }) => count));
  task.bars.forEach(({ count }, bar) => expect(used[bar]).toBeLessThanOrEqual(count ?? Infinity));
  expect(cost).toBe(used.reduce((sum, count, bar) => sum + count * task.bars[bar]!.cost, 0));
  expect(length).toBe(used.reduce((sum, count, bar) => sum + count * task.bars[bar]!.length, 0));
}
