// ISO 2768-1:1989: lengths (classes f, m, v seen in secondary copies, c from memory) and angles (from memory). Every cell
// at both of its ends.
import { describe, expect, it } from 'vitest';
import { angleTolerance, linearTolerance, type GeneralClass } from '../../server/solver/frame/general-tolerances.ts';

const ends = (least: number, limits: readonly number[], index: number) => [
  index === 0 ? least : limits[index - 1]! + 0.01,
  limits[index] ?? 1e6,
];

describe('lengths ± mm', () => {
  it.each([
    ['iso-2768-f', [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, undefined], 'iso-2768-1'],
    ['iso-2768-m', [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2], 'iso-2768-1'],
    ['iso-2768-c', [0.2, 0.3, 0.5, 0.8, 1.2, 2, 3, 4], 'iso-2768-1-memory'],
    ['iso-2768-v', [undefined, 0.5, 1, 1.5, 2.5, 4, 6, 8], 'iso-2768-1'],
  ] as [GeneralClass, (number | undefined)[], string][])('%s', (general, printed, source) => {
    for (const [index, plusMinus] of printed.entries())
      for (const nominal of ends(0.5, [3, 6, 30, 120, 400, 1000, 2000, 4000], index))
        expect(linearTolerance(general, nominal)).toEqual(plusMinus === undefined ? undefined : { plusMinus, source });
    expect(linearTolerance(general, 0.49)).toBeUndefined();
    expect(linearTolerance(general, 4000.1)).toBeUndefined();
  });
});

describe('angles ± minutes by the shorter leg', () => {
  it.each([
    ['iso-2768-f', [60, 30, 20, 10, 5]],
    ['iso-2768-m', [60, 30, 20, 10, 5]],
    ['iso-2768-c', [90, 60, 30, 15, 10]],
    ['iso-2768-v', [180, 120, 60, 30, 20]],
  ] as [GeneralClass, number[]][])('%s', (general, minutes) => {
    for (const [index, printed] of minutes.entries())
      for (const leg of ends(1, [10, 50, 120, 400], index)) {
        const { plusMinus, source } = angleTolerance(general, leg)!;
        expect((plusMinus * 180 * 60) / Math.PI).toBeCloseTo(printed, 9);
        expect(source).toBe('iso-2768-1-memory');
      }
  });
});
