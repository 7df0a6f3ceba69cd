import { expect, it } from 'vitest';
import { barsIn, cut } from '../nesting/cut-for-test.ts';

/** How many pieces of each length [mm], from bars of 5600 mm with no kerf and no trim. */
const ORDER = [
  [22, 1380],
  [25, 1520],
  [12, 1560],
  [14, 1710],
  [18, 1820],
  [18, 1880],
  [20, 1930],
  [10, 2000],
  [12, 2050],
  [14, 2100],
  [16, 2140],
  [18, 2150],
  [20, 2200],
] as const;

it('the worked example of the cutting stock problem takes 73 bars, and no fewer do', () => {
  const { best } = cut({
    pieces: ORDER.map(([count, length]) => ({ length: 100 * length, count })),
    bars: [{ length: 560_000, count: null, cost: 1 }],
    kerf: 0,
    endTrim: 0,
  });
  expect(barsIn(best)).toBe(73);
  expect(best.costBound).toBe(73);
  // the pieces together are 72.7 bars long, so that 73 is the least by their length alone
  expect(ORDER.reduce((sum, [count, length]) => sum + count * length, 0) / 5600).toBeGreaterThan(72);
});
