import { describe, expect, it } from 'vitest';
import type { LogEntry } from '../../../server/job/rates.ts';
import { ownRatio, ownTimes } from '../../../server/solver/quote/own-times.ts';
import { formulaValue } from '../formula-value.ts';

const entry = (given: Partial<LogEntry> = {}): LogEntry => ({
  operation: 'weld',
  date: '',
  count: 5,
  setUp: 10,
  minutes: 70,
  process: 20,
  planned: 60,
  ...given,
});

const TWO = [entry(), entry({ setUp: 20, minutes: 40, process: 10, planned: 40 })];

describe('times of a shop', () => {
  it('are the mean of its entries, with their spread', () => {
    const [own] = ownTimes(TWO);
    expect(own?.entries).toBe(2);
    expect(own?.setUp).toMatchObject({ value: 15, unit: 'min' });
    // 5 either side of the mean: √50
    expect(own?.setUp.band?.plusMinus.toFixed(4)).toBe('7.0711');
    // 50 min for 5, 30 min for 5: 10 and 6
    expect(own?.each).toMatchObject({ value: 8, unit: 'min' });
    expect(own?.each.band?.plusMinus.toFixed(4)).toBe('2.8284');
    // 80 and 60 min taken, 60 and 40 planned: 1.333 and 1.5, weighed 60 to 40: √(0.66667/48)
    expect(own?.ratio?.value).toBeCloseTo(1.4, 12);
    expect(own?.ratio?.band?.plusMinus.toFixed(4)).toBe('0.1179');
    expect(own?.each.working.sources).toEqual(['own-times']);
    for (const told of [own!.setUp, own!.each, own!.ratio!]) expect(formulaValue(told)).toBeCloseTo(told.value, 12);
  });

  it('weigh each piece alike, so that the mean gives back all that was taken', () => {
    const [own] = ownTimes([
      entry({ count: 1, minutes: 10, process: 0 }),
      entry({ count: 3, minutes: 18, process: 0 }),
    ]);
    // 28 min for 4; Σ n (e − 7)² = 9 + 3, over 4 − 10/4
    expect(own?.each.value).toBe(7);
    expect(own?.each.band?.plusMinus).toBeCloseTo(Math.sqrt(12 / 1.5), 12);
  });

  it('have no spread of one entry, and never fall under nothing', () => {
    const [own] = ownTimes([entry({ minutes: 10, process: 30 })]);
    expect(own?.each).toMatchObject({ value: 0, band: null });
    expect(own?.setUp).toMatchObject({ value: 10, band: null });
    expect(own?.ratio?.band).toBeNull();
  });

  it('tell no ratio where nothing had been planned, and leave such entries out of it', () => {
    expect(ownTimes([entry({ planned: 0 })])[0]?.ratio).toBeNull();
    const [own] = ownTimes([...TWO, entry({ planned: 0, minutes: 5000 })]);
    expect(own?.entries).toBe(3);
    expect(own?.ratio?.value).toBeCloseTo(1.4, 12);
    expect(ownRatio([...TWO, entry({ planned: 0 })], 'weld')?.entries).toBe(2);
  });

  it('come in the order of the work, and only of what was done', () => {
    const log = [...TWO, entry({ operation: 'cut' }), entry({ operation: 'bend' })];
    expect(ownTimes(log).map(({ operation }) => operation)).toEqual(['bend', 'cut', 'weld']);
    expect(ownTimes([])).toEqual([]);
  });

  it('scale with what was taken, and stay numbers at the ends of what may be typed', () => {
    const [one] = ownTimes(TWO);
    const [ten] = ownTimes(
      TWO.map((each) => ({ ...each, setUp: 10 * each.setUp, minutes: 10 * each.minutes, process: 10 * each.process })),
    );
    expect(ten!.each.value).toBeCloseTo(10 * one!.each.value, 10);
    expect(ten!.each.band!.plusMinus).toBeCloseTo(10 * one!.each.band!.plusMinus, 10);
    const far = ownTimes([entry({ planned: 5e-324, count: 1 }), entry({ planned: 100_000, count: 100_000 })]);
    const values = far.flatMap(({ setUp, each, ratio }) => [setUp, each, ratio]).map((found) => found?.value ?? 0);
    expect(values.every(Number.isFinite)).toBe(true);
  });
});
