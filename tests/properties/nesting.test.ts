import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CuttingTask } from '../../server/nesting/cutting-task.ts';
import { barsIn, cut, isProven } from '../nesting/cut-for-test.ts';
import { everyWayToCut } from './every-way-to-cut.ts';

const mm = (low: number, high: number) => fc.integer({ min: 100 * low, max: 100 * high });

/** Up to seven pieces, and up to three kinds of bar: some bought, some of which there are few; one of any length. */
const small: fc.Arbitrary<CuttingTask> = fc.record({
  pieces: fc
    .uniqueArray(fc.record({ length: mm(200, 3000), count: fc.integer({ min: 1, max: 3 }) }), {
      minLength: 1,
      maxLength: 5,
      selector: ({ length }) => length,
    })
    .filter((pieces) => pieces.reduce((sum, { count }) => sum + count, 0) <= 7),
  bars: fc
    .tuple(
      fc.array(
        fc.record({
          length: fc.oneof(mm(1000, 6000), fc.constantFrom(300_000, 400_000)),
          count: fc.oneof(fc.integer({ min: 1, max: 3 }), fc.constant(null)),
          cost: fc.oneof(fc.constantFrom(0, 4500, 6000), fc.integer({ min: 0, max: 9999 })),
        }),
        { maxLength: 2 },
      ),
      fc.constantFrom(0, 1, 9000, 8973),
    )
    .map(([bars, cost]) => [...bars, { length: 600_000, count: null, cost }]),
  kerf: fc.constantFrom(0, 100, 250),
  endTrim: fc.constantFrom(0, 500, 2000),
});

/** Some more pieces, and bars of one length. */
const larger: fc.Arbitrary<CuttingTask> = fc.record({
  pieces: fc.uniqueArray(fc.record({ length: mm(300, 2900), count: fc.integer({ min: 1, max: 12 }) }), {
    minLength: 1,
    maxLength: 6,
    selector: ({ length }) => length,
  }),
  bars: fc.constant([{ length: 600_000, count: null, cost: 9000 }]),
  kerf: fc.constantFrom(0, 100, 250),
  endTrim: fc.constantFrom(0, 500, 2000),
});

describe('bars that are sought', () => {
  it('cost no more, and of the same cost are no longer, than the best of every way to cut', () => {
    fc.assert(
      fc.property(small, (task) => {
        const { best } = cut(task);
        expect(isProven(best)).toBe(true);
        expect({ cost: best.cost, length: best.length }).toEqual(everyWayToCut(task));
      }),
      { numRuns: 100 },
    );
  });

  it('never become fewer or cheaper by a wider kerf or a longer end trim', () => {
    fc.assert(
      fc.property(larger, fc.integer({ min: 1, max: 500 }), fc.boolean(), (task, more, isKerf) => {
        const wider = isKerf ? { ...task, kerf: task.kerf + more } : { ...task, endTrim: task.endTrim + 10 * more };
        const [before, after] = [cut(task).best, cut(wider).best];
        expect(after.cost).toBeGreaterThanOrEqual(before.costBound);
        expect(barsIn(after)).toBeGreaterThanOrEqual(Math.ceil(before.costBound / 9000));
        expect(isProven(before) && isProven(after)).toBe(true);
        expect(barsIn(after)).toBeGreaterThanOrEqual(barsIn(before));
      }),
      { numRuns: 80 },
    );
  });

  it('get better all the time while they are sought, and their bound never passes them', () => {
    fc.assert(
      fc.property(small, (task) => {
        const { best, told } = cut(task);
        for (const [index, { cost, costBound, length }] of told.entries()) {
          expect(costBound).toBeLessThanOrEqual(best.cost);
          const last = told[index - 1];
          if (last === undefined) continue;
          expect(cost).toBeLessThanOrEqual(last.cost);
          expect(costBound).toBeGreaterThanOrEqual(last.costBound);
          if (cost === last.cost && costBound === cost) expect(length).toBeLessThanOrEqual(last.length);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('are the same for the same pieces', () => {
    fc.assert(
      fc.property(larger, (task) => {
        expect(cut(task).best).toEqual(cut(task).best);
      }),
      { numRuns: 20 },
    );
  });
});
