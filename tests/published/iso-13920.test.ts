// ISO 13920 tables 1 to 3, from a secondary copy; classes G and H of table 3 from memory. Every cell is looked up at
// both of its ends: a limit belongs to the range below it.
import { describe, expect, it } from 'vitest';
import {
  angleTolerance,
  formTolerance,
  linearTolerance,
  type FormClass,
  type GeneralClass,
} from '../../server/solver/frame/general-tolerances.ts';

const LIMITS = [30, 120, 400, 1000, 2000, 4000, 8000, 12_000, 16_000, 20_000];
const ends = (least: number, limits: readonly number[], index: number) => [
  index === 0 ? least : limits[index - 1]! + 0.01,
  limits[index] ?? 1e6,
];

describe('table 1, lengths ± mm', () => {
  it.each([
    ['iso-13920-a', [1, 1, 1, 2, 3, 4, 5, 6, 7, 8, 9]],
    ['iso-13920-b', [1, 2, 2, 3, 4, 6, 8, 10, 12, 14, 16]],
    ['iso-13920-c', [1, 3, 4, 6, 8, 11, 14, 18, 21, 24, 27]],
    ['iso-13920-d', [1, 4, 7, 9, 12, 16, 21, 27, 32, 36, 40]],
  ] as [GeneralClass, number[]][])('%s', (general, printed) => {
    for (const [index, plusMinus] of printed.entries())
      for (const nominal of ends(2, LIMITS, index))
        expect(linearTolerance(general, nominal)).toEqual({ plusMinus, source: 'iso-13920' });
    expect(linearTolerance(general, 1.99)).toBeUndefined();
  });
});

// minutes of arc, and the same as mm a metre, which the standard rounds
describe('table 2, angles by the shorter leg', () => {
  it.each([
    ['iso-13920-a', [20, 15, 10], [6, 4.5, 3]],
    ['iso-13920-b', [45, 30, 20], [13, 9, 6]],
    ['iso-13920-c', [60, 45, 30], [18, 13, 9]],
    ['iso-13920-d', [90, 75, 60], [26, 22, 18]],
  ] as [GeneralClass, number[], number[]][])('%s', (general, minutes, perMetre) => {
    for (const [index, printed] of minutes.entries())
      for (const leg of ends(1, [400, 1000], index)) {
        const { plusMinus, source } = angleTolerance(general, leg)!;
        expect((plusMinus * 180 * 60) / Math.PI).toBeCloseTo(printed, 9);
        expect(Math.abs(1000 * Math.tan(plusMinus) - perMetre[index]!)).toBeLessThan(0.6);
        expect(source).toBe('iso-13920');
      }
    expect(angleTolerance(general, 0)).toBeUndefined();
  });
});

describe('table 3, straight, flat, parallel, mm', () => {
  it.each([
    ['iso-13920-e', [0.5, 1, 1.5, 2, 3, 4, 5, 6, 7, 8], 'iso-13920'],
    ['iso-13920-f', [1, 1.5, 3, 4.5, 6, 8, 10, 12, 14, 16], 'iso-13920'],
    ['iso-13920-g', [1.5, 3, 5.5, 9, 11, 16, 20, 22, 25, 25], 'iso-13920-memory'],
    ['iso-13920-h', [2.5, 5, 9, 14, 18, 26, 32, 36, 40, 40], 'iso-13920-memory'],
  ] as [FormClass, number[], string][])('%s', (form, printed, source) => {
    for (const [index, zone] of printed.entries())
      for (const nominal of ends(30, LIMITS.slice(1), index))
        expect(formTolerance(form, nominal)).toEqual({ zone, source });
    expect(formTolerance(form, 29.9)).toBeUndefined();
  });
});

it('a computed length that is a limit but for rounding lies on it', () => {
  expect(linearTolerance('iso-13920-b', 400.000_000_1)!.plusMinus).toBe(2);
  expect(linearTolerance('iso-13920-b', 1.999_999_9)!.plusMinus).toBe(1);
  expect(linearTolerance('iso-13920-b', NaN)).toBeUndefined();
});
