import { describe, expect, it } from 'vitest';
import { firstCuts } from '../../server/nesting/cut-bars.ts';
import type { CuttingTask } from '../../server/nesting/cutting-task.ts';
import { materialBound } from '../../server/nesting/material-bound.ts';
import { cut } from './cut-for-test.ts';

/** Numbers from 0 to 1 that are the same every time (a linear congruential generator, constants from memory). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32) / 2 ** 32;
}

/** Many lengths and kinds of bar, half of which cost nothing. */
function large(lengths: number, kinds: number): CuttingTask {
  const next = numbers(lengths * 7 + kinds);
  const bars = Array.from({ length: kinds - 1 }, () => {
    const length = 150_000 + Math.floor(next() * 450_000);
    return { length, count: 1 + Math.floor(next() * 3), cost: next() < 0.5 ? 0 : Math.floor(length / 70) };
  });
  const pieces = Array.from({ length: lengths }, () => ({
    length: 30_000 + Math.floor(next() * 240_000),
    count: 1 + Math.floor(next() * 4),
  }));
  return { pieces, bars: [...bars, { length: 600_000, count: null, cost: 9000 }], kerf: 200, endTrim: 1000 };
}

const costsOf = ({ bars }: CuttingTask): number[] => bars.map(({ cost }) => cost);

describe('what no bars can come below', () => {
  it('is known before anything is sought, bars that cost nothing filled first', () => {
    const task: CuttingTask = {
      pieces: [{ length: 200_000, count: 6 }],
      bars: [
        { length: 400_000, count: 2, cost: 0 },
        { length: 600_000, count: null, cost: 9000 },
      ],
      kerf: 0,
      endTrim: 0,
    };
    expect(materialBound({ task, costs: costsOf(task), limit: null })).toBeCloseTo(6000, 6);
    expect(firstCuts(task, () => true)).toMatchObject({ cost: 9000, costBound: 6000 });
  });

  it('leaves out bars that are too short for the long pieces', () => {
    const task: CuttingTask = {
      pieces: [
        { length: 350_000, count: 3 },
        { length: 10_000, count: 1 },
      ],
      bars: [
        { length: 300_000, count: 9, cost: 0 },
        { length: 600_000, count: null, cost: 9000 },
      ],
      kerf: 0,
      endTrim: 0,
    };
    expect(materialBound({ task, costs: costsOf(task), limit: null })).toBe(27_000);
  });
});

describe('a large order', () => {
  it.each([
    [80, 40],
    [200, 60],
  ])('of %i lengths and %i kinds of bar has a bound near to its cost in a second', (lengths, kinds) => {
    const { best, told } = cut(large(lengths, kinds), 1);
    expect(told.every(({ costBound }) => costBound > 0)).toBe(true);
    expect(best.cost / best.costBound).toBeLessThan(1.1);
  });

  it('whose time is over at once still has an answer and a bound', () => {
    const { best } = cut(large(200, 60), 0);
    expect(best.costBound).toBeGreaterThan(0);
    expect(best.cost).toBeGreaterThanOrEqual(best.costBound);
  });
});
