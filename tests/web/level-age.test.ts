import { describe, expect, it } from 'vitest';
import { parseJob } from '../../server/job/validate.ts';
import { ageOf, wallClock } from '../../web/state/level-age.ts';
import { freshSet } from '../../web/state/level-readings.ts';
import { NOON, withSets } from './level-read.ts';

describe('how old readings are', () => {
  it('is told by the hands of the clock alone', () => {
    expect(ageOf(NOON, 2, '2026-11-26T13:59')).toEqual({ is: 'fresh', minutes: 119, until: '2026-11-26T14:00' });
    expect(ageOf(NOON, 2, '2026-11-26T14:00')).toMatchObject({ is: 'fresh' });
    expect(ageOf(NOON, 2, '2026-11-26T14:01')).toEqual({ is: 'old', minutes: 121, until: '2026-11-26T14:00' });
    expect(ageOf('2026-12-31T23:30', 1, '2027-01-01T00:45')).toMatchObject({ is: 'old', minutes: 75 });
    expect(ageOf(NOON, 0.05, '2026-11-26T12:04')).toMatchObject({ is: 'old' });
  });

  it('says when nothing was noted, and when the time is still to come', () => {
    expect(ageOf('', 2, NOON)).toEqual({ is: 'unknown' });
    expect(ageOf('2026-13-40T99:99', 2, NOON)).toEqual({ is: 'unknown' });
    expect(ageOf('2026-11-26T12:04', 2, NOON)).toMatchObject({ is: 'fresh', minutes: 0 });
    expect(ageOf('2026-11-26T12:06', 2, NOON)).toEqual({ is: 'ahead' });
  });

  it('takes what the clock on the wall shows in the form that the job keeps', () => {
    expect(wallClock(new Date(2026, 0, 2, 3, 4))).toBe('2026-01-02T03:04');
    expect(parseJob(withSets({ ...freshSet('two-levels'), taken: wallClock(new Date()) })).ok).toBe(true);
  });
});
