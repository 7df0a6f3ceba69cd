import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { LevelSet } from '../../server/job/level.ts';
import { parseJob } from '../../server/job/validate.ts';
import {
  READ_ANGLE,
  SIDED_ANGLE,
  sidedTextAt,
  sidedTrouble,
  withAngleSide,
  withAngleSize,
} from '../../web/state/level-angle.ts';
import { freshReadings, freshSet } from '../../web/state/level-readings.ts';
import { valueAt } from '../../web/state/pointer.ts';
import { FIRST_ANGLE, levelBegun, levelRead, withSets } from './level-read.ts';

describe('an angle with a side', () => {
  const value = (job: Job): unknown => valueAt(job, FIRST_ANGLE);

  it('is a size and a choice on the page, one signed number in the job', () => {
    const typed = withAngleSize(levelRead, FIRST_ANGLE, '0.8');
    expect(value(typed)).toBe(0.8);
    const back = withAngleSide(typed, FIRST_ANGLE, true);
    expect([value(back), sidedTextAt(back, FIRST_ANGLE)]).toEqual([-0.8, { negative: true, size: '0.8' }]);
    expect(value(withAngleSide(back, FIRST_ANGLE, false))).toBe(0.8);
    expect(parseJob(back).ok).toBe(true);
  });

  it('keeps a side that was chosen before the number', () => {
    const chosen = withAngleSide(levelRead, FIRST_ANGLE, true);
    expect([value(chosen), sidedTextAt(chosen, FIRST_ANGLE)]).toEqual([0, { negative: true, size: '0' }]);
    expect(value(withAngleSize(chosen, FIRST_ANGLE, '1.7'))).toBe(-1.7);
  });

  it('is not read while there is a side alone, which is kept, and again once it is cleared', () => {
    const chosen = withAngleSide(levelBegun, FIRST_ANGLE, true, READ_ANGLE);
    expect([value(chosen), sidedTextAt(chosen, FIRST_ANGLE)]).toEqual([null, { negative: true, size: '' }]);
    expect(parseJob(chosen).ok).toBe(true);
    const read = withAngleSize(chosen, FIRST_ANGLE, '0.8', READ_ANGLE);
    expect(value(read)).toBe(-0.8);
    const cleared = withAngleSize(read, FIRST_ANGLE, ' ', READ_ANGLE);
    expect([value(cleared), sidedTextAt(cleared, FIRST_ANGLE).negative]).toEqual([null, true]);
    const said = { sides: ['ahead', 'astern'], most: 180, form: READ_ANGLE } as const;
    for (const job of [levelBegun, chosen, read, cleared]) expect(sidedTrouble(job, FIRST_ANGLE, false, said)).toBe('');
  });

  it('is refused by its size and its side, with the last good one by its own', () => {
    const said = { sides: ['ahead', 'astern'], most: 89, form: SIDED_ANGLE } as const;
    const good = withAngleSize(levelRead, FIRST_ANGLE, '10');
    const typed = withAngleSize(withAngleSide(good, FIRST_ANGLE, true), FIRST_ANGLE, '95');
    // as the page puts it back while the text stays
    const put = { ...good, asTyped: typed.asTyped };
    expect(sidedTrouble(put, FIRST_ANGLE, true, said)).toBe(
      'This is 95°, astern; it may be 89° at most to either side. Type a smaller angle. The plan still uses 10°, ahead.',
    );
    const unread = withAngleSize(withAngleSide(good, FIRST_ANGLE, true), FIRST_ANGLE, '1x.');
    expect(sidedTrouble(unread, FIRST_ANGLE, false, said)).toBe(
      'This cannot be read as a number. The plan still uses 10°, astern.',
    );
  });

  it('takes a minus of one’s own for the second side, letter by letter', () => {
    const letters = ['-', '-0', '0.', '0.8'].reduce((job, text) => withAngleSize(job, FIRST_ANGLE, text), levelRead);
    expect([value(letters), sidedTextAt(letters, FIRST_ANGLE)]).toEqual([-0.8, { negative: true, size: '0.8' }]);
    expect(value(withAngleSize(levelRead, FIRST_ANGLE, '\u22120.8'))).toBe(-0.8);
  });

  it('shows a number that nobody typed by its size', () => {
    const set = { ...freshSet('two-levels'), readings: [{ ...freshReadings('two-levels')[0]!, angle: -1.25 }] };
    expect(sidedTextAt(withSets(set as LevelSet), FIRST_ANGLE)).toEqual({ negative: true, size: '1.25' });
  });

  it('keeps a text that is no number, and the last angle with it', () => {
    const text = withAngleSize(withAngleSize(levelRead, FIRST_ANGLE, '0.8'), FIRST_ANGLE, '0.8x.');
    expect([value(text), sidedTextAt(text, FIRST_ANGLE).size]).toEqual([0.8, '0.8x.']);
  });

  it('is the number that a side and a size say, whichever comes first', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 18_000 }), fc.boolean(), (hundredths, negative) => {
        const size = String(hundredths / 100);
        const first = withAngleSide(withAngleSize(levelRead, FIRST_ANGLE, size), FIRST_ANGLE, negative);
        const second = withAngleSize(withAngleSide(levelRead, FIRST_ANGLE, negative), FIRST_ANGLE, size);
        expect(first).toEqual(second);
        expect(Math.abs(Number(value(first)) - (negative ? -1 : 1) * (hundredths / 100))).toBeLessThan(1e-12);
      }),
      { numRuns: 60 },
    );
  });
});
