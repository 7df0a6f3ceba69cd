import { describe, expect, it } from 'vitest';
import { barUse } from '../../../server/solver/stock/bar-use.ts';
import { fewestBars } from '../../../server/solver/stock/fewest-bars.ts';
import { firstFit } from '../../../server/solver/stock/first-fit.ts';
import { SAW } from './made-up-stock.ts';

const NO_SAW = { kerf: 0, endTrim: 0, leastRemnant: 500 };

/** Lengths with how many of each. */
const lengths = (...of: readonly (readonly [number, number])[]) => of.map(([length, count]) => ({ length, count }));

const barsOf = (...asked: Parameters<typeof firstFit>): number =>
  firstFit(...asked)!.reduce((sum, { bars }) => sum + bars, 0);

describe('what becomes of a bar', () => {
  it('takes one kerf between pieces and one more for the offcut', () => {
    // 6000 − 10 − (2000 + 2000 + 1200) − 3 × 3
    expect(barUse({ length: 6000, pieces: [2000, 2000, 1200] }, SAW)).toEqual({ kerfs: 9, offcut: 781, kept: true });
  });

  it('leaves the last kerf off where the pieces come out even', () => {
    expect(barUse({ length: 6000, pieces: [2993.5, 2993.5] }, SAW)).toEqual({ kerfs: 3, offcut: 0, kept: false });
    // one mm left: the saw takes it
    expect(barUse({ length: 6001, pieces: [2993.5, 2993.5] }, SAW)).toEqual({ kerfs: 4, offcut: 0, kept: false });
  });

  it('keeps an offcut from the shortest on that is kept', () => {
    expect(barUse({ length: 6000, pieces: [5487] }, SAW)).toMatchObject({ offcut: 500, kept: true });
    expect(barUse({ length: 6000, pieces: [5487.1] }, SAW)).toMatchObject({ kept: false });
    // nothing is nothing to keep
    expect(barUse({ length: 6000, pieces: [5990] }, { ...SAW, leastRemnant: 0 })).toMatchObject({ kept: false });
  });

  it('has no room for more than there is', () => {
    expect(barUse({ length: 6000, pieces: [5990.01] }, SAW)).toBeUndefined();
    expect(barUse({ length: 6000, pieces: [2994, 2994] }, SAW)).toBeUndefined();
  });
});

describe('first fit, the longest first', () => {
  it('fills one bar after the other', () => {
    // 3000 + 2900 | 2500 + 2500 + … : by hand with kerf 3 and trim 10, 5990 to use
    const laid = firstFit(lengths([2500, 2], [3000, 1], [2900, 1], [900, 1]), 6000, SAW)!;
    expect(laid.map(({ bars, on }) => [bars, on.map(({ index, count }) => [index, count])])).toEqual([
      [
        1,
        [
          [1, 1],
          [2, 1],
        ],
      ],
      [
        1,
        [
          [0, 2],
          [3, 1],
        ],
      ],
    ]);
    expect(laid.map(({ use }) => use.offcut)).toEqual([6000 - 10 - 5900 - 6, 6000 - 10 - 5900 - 9]);
  });

  it('finds bars cut alike at once', () => {
    const laid = firstFit(lengths([1400, 4000], [700, 1000]), 6000, SAW)!;
    expect(laid.map(({ bars }) => bars)).toEqual([1000, 125]);
    expect(laid[1]!.on).toEqual([{ index: 1, count: 8 }]);
  });

  it('has nothing for a piece that no bar gives, and no bars for no pieces', () => {
    expect(firstFit(lengths([5991, 1]), 6000, SAW)).toBeNull();
    expect(firstFit(lengths([5991, 0], [100, 1]), 6000, SAW)).toHaveLength(1);
    expect(firstFit([], 6000, SAW)).toEqual([]);
    expect(firstFit(lengths([1, 1]), 5, SAW)).toBeNull();
  });

  it('may need one bar more than the fewest', () => {
    // 4 + 3 + 3 twice fills two bars; the longest first: 4 + 4 | 3 + 3 + 3 | 3
    const asked = lengths([40, 2], [30, 4]);
    expect(barsOf(asked, 100, NO_SAW)).toBe(3);
    expect(fewestBars(asked, 100, NO_SAW)).toBe(2);
  });
});

describe('the fewest bars that could ever do', () => {
  it('is what all lengths together need, where nothing else is in the way', () => {
    expect(fewestBars(lengths([10, 21]), 100, NO_SAW)).toBe(3);
    expect(fewestBars(lengths([10, 20]), 100, NO_SAW)).toBe(2);
    expect(fewestBars([], 100, NO_SAW)).toBe(0);
  });

  it('gives every piece longer than half a bar one of its own', () => {
    expect(fewestBars(lengths([51, 7]), 100, NO_SAW)).toBe(7);
    // half a bar each: two on one, until a kerf is between them
    expect(fewestBars(lengths([50, 8]), 100, NO_SAW)).toBe(4);
    expect(fewestBars(lengths([50, 8]), 100, { ...NO_SAW, kerf: 0.1 })).toBe(8);
  });

  it('knows that a bar with a long piece has no room for a middling one', () => {
    // 5 × 70 take nothing of 40; 4 × 40 go on two more, where 350 + 160 = 510 would do with 6
    expect(fewestBars(lengths([70, 5], [40, 4]), 100, NO_SAW)).toBe(7);
    expect(barsOf(lengths([70, 5], [40, 4]), 100, NO_SAW)).toBe(7);
  });
});
