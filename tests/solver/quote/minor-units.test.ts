import { describe, expect, it } from 'vitest';
import { MOST_AMOUNT, wholeMinor } from '../../../server/solver/quote/minor-units.ts';
import { validUntil } from '../../../server/solver/quote/valid-until.ts';

describe('whole minor units', () => {
  it('halves go up, below zero too', () => {
    expect([2.4, 2.5, 2.6, -2.4, -2.5, -2.6, -0.2].map(wholeMinor)).toEqual([2, 3, 3, -2, -2, -3, 0]);
    expect(Object.is(wholeMinor(-0.2), 0)).toBe(true);
  });

  it('a half stays one where binary numbers are a hair below it', () => {
    expect(1.005 * 100).toBeLessThan(100.5);
    expect(wholeMinor(1.005 * 100)).toBe(101);
    expect(wholeMinor(100.4999999)).toBe(100);
  });

  it('more than can be counted is none', () => {
    expect(wholeMinor(MOST_AMOUNT)).toBe(1e12);
    expect(wholeMinor(MOST_AMOUNT + 1)).toBeNull();
    expect(wholeMinor(-MOST_AMOUNT - 1)).toBeNull();
    expect(wholeMinor(Infinity)).toBeNull();
    expect(wholeMinor(NaN)).toBeNull();
  });
});

describe('how long a quote stands', () => {
  it('counts days by the calendar', () => {
    expect(validUntil('2026-11-25', 30)).toBe('2026-12-25');
    expect(validUntil('2024-02-28', 1)).toBe('2024-02-29');
    expect(validUntil('2100-02-28', 1)).toBe('2100-03-01');
    expect(validUntil('2026-11-25', 0)).toBe('2026-11-25');
  });

  it('as the clock of a computer does', () => {
    for (const date of ['1600-02-29', '1999-12-31', '2000-01-01', '2026-03-01', '2399-12-31'])
      for (let days = 0; days <= 730; days += 1) {
        const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
        const expected = new Date(Date.UTC(year, month - 1, day + days)).toISOString().slice(0, 10);
        expect(validUntil(date, days)).toBe(expected);
      }
  });

  it('has no end without a day, nor beyond the last year', () => {
    expect(validUntil('', 30)).toBe('');
    expect(validUntil('9999-12-31', 1)).toBe('');
  });
});
