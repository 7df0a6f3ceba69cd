import { describe, expect, it } from 'vitest';
import { wallClockAfter, wallClockWords } from '../../server/language/wall-clock.ts';

describe('the clock on the wall', () => {
  it.each([
    ['2026-11-26T09:40', 2, '2026-11-26T11:40'],
    ['2026-11-26T23:10', 2, '2026-11-27T01:10'],
    ['2026-12-31T23:59', 0.05, '2027-01-01T00:02'],
    ['2028-02-28T12:00', 24, '2028-02-29T12:00'],
    // where clocks are put forward or back, so many hours are still so many hours
    ['2026-03-29T01:30', 1, '2026-03-29T02:30'],
    ['2026-10-25T01:30', 2, '2026-10-25T03:30'],
    ['0050-01-01T00:00', 8760, '0051-01-01T00:00'],
  ])('shows after %s and %d hours %s', (taken, hours, then) => {
    expect(wallClockAfter(taken, hours)).toBe(then);
  });

  it('is never later than it should be', () => {
    expect(wallClockAfter('2026-11-26T09:40', 1.999)).toBe('2026-11-26T11:39');
  });

  it.each(['', '2026-02-31T09:40', '2026-13-01T09:40', '2026-11-26T25:00', 'yesterday'])(
    'says nothing where %s was typed',
    (taken) => {
      expect(wallClockAfter(taken, 2)).toBe('');
    },
  );

  it('says nothing beyond the years that can be typed', () => {
    expect(wallClockAfter('9999-12-31T23:00', 2)).toBe('');
  });

  it('is read with day and time apart', () => {
    expect(wallClockWords('2026-11-26T09:40')).toBe('2026-11-26 09:40');
  });
});
