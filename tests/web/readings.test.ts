import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CameBack, MOST_READINGS as SCHEMA_MOST, SizeReading } from '../../server/job/came-back.ts';
import { newJob } from '../../server/job/default-job.ts';
import { Fixing } from '../../server/job/fixing.ts';
import type { Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import { LONGEST_READING, MOST_FIXINGS, MOST_READINGS } from '../../web/state/limits.ts';
import {
  freshCameBack,
  otherReadings,
  placeOfSize,
  READINGS,
  readingsOf,
  sizeField,
  withReadings,
  withSizeReference,
  withSizeText,
} from '../../web/state/readings.ts';
import { withText } from '../../web/state/typed-text.ts';

const empty: Job = { ...newJob('hoop'), cameBack: freshCameBack };
const width = { key: 'width-at-corners', index: 0, reference: 'outside' } as const;
const leg = { key: 'left-leg', index: 0, reference: 'outside' } as const;
const bar = (index: number) => ({ key: 'crossbar-from-foot', index, reference: 'centre' }) as const;

/** Letters typed one by one, as a keyboard brings them. */
const typed = (job: Job, size: typeof width | typeof leg, text: string): Job =>
  Array.from({ length: text.length }, (_, end) => text.slice(0, end + 1)).reduce(
    (next, part) => withSizeText(next, size, part),
    job,
  );
const reading = (job: Job, at: number) => readingsOf(job)[at];

describe('what was found for a size', () => {
  it('is a reading from its first letter on, in the unit that was typed', () => {
    const job = typed(typed(empty, width, '38 1/2 in'), leg, '660');
    expect(readingsOf(job)).toEqual([
      { reading: 'size', check: width.key, index: 0, reference: 'outside', value: 38.5 * 25.4, accuracy: null },
      { reading: 'size', check: leg.key, index: 0, reference: 'outside', value: 660, accuracy: null },
    ]);
    expect(job.asTyped).toEqual({ [`${READINGS}/0/value`]: '38 1/2 in', [`${READINGS}/1/value`]: '660' });
    expect(parseJob(job).ok).toBe(true);
  });

  it('is gone with its last letter, and the others keep their texts', () => {
    const job = withSizeText(typed(typed(empty, width, '38 in'), leg, '26 in'), width, '  ');
    expect(readingsOf(job)).toEqual([reading(typed(empty, leg, '26 in'), 0)]);
    expect(job.asTyped).toEqual({ [`${READINGS}/0/value`]: '26 in' });
    expect(withSizeText(empty, width, '')).toBe(empty);
  });

  it('leaves nothing behind, whatever is typed before it is cleared', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 12 }), (text) => {
        expect(withSizeText(typed(empty, width, text), width, '')).toEqual(empty);
      }),
    );
  });

  it('keeps what cannot be read, without a value that no job may hold', () => {
    for (const text of ['about 38', '-4', '0', '999999999']) {
      const job = withSizeText(empty, width, text);
      expect(reading(job, 0)).toMatchObject({ check: width.key, value: null });
      expect(job.asTyped[`${READINGS}/0/value`]).toBe(text);
      expect(parseJob(job).ok).toBe(true);
    }
  });

  it('stays without its value where more was said of it', () => {
    const accurate = withText(typed(empty, width, '970'), `${READINGS}/0/accuracy`, '3', {
      kind: 'length',
      mayBeEmpty: true,
    });
    expect(reading(withSizeText(accurate, width, ''), 0)).toMatchObject({ value: null, accuracy: 3 });
    const inside = withSizeReference(typed(empty, width, '970'), width, 'inside');
    expect(reading(inside, 0)).toMatchObject({ reference: 'inside', value: 970 });
    expect(reading(withSizeText(inside, width, ''), 0)).toMatchObject({ reference: 'inside', value: null });
  });

  it('can be measured otherwise before it is measured at all', () => {
    const job = withSizeReference(empty, width, 'inside');
    expect(reading(job, 0)).toMatchObject({ check: width.key, reference: 'inside', value: null });
    expect(reading(withSizeText(job, width, '900'), 0)).toMatchObject({ reference: 'inside', value: 900 });
    expect(withSizeReference(job, width, 'outside')).toEqual(empty);
    expect(withSizeReference(empty, width, 'outside')).toBe(empty);
  });

  it('is told from the same size of another crossbar', () => {
    const readings = readingsOf(withSizeText(typed(empty, width, '971'), bar(1), '351'));
    expect(placeOfSize(readings, bar(1))).toBe(1);
    expect(placeOfSize(readings, bar(2))).toBe(-1);
    expect(sizeField(readings, bar(1))).toBe(`${READINGS}/1`);
    expect(sizeField(readings, bar(2)).startsWith(`${READINGS}/`)).toBe(false);
  });
});

describe('readings that the list of sizes does not show', () => {
  it('are another kind, a size of no frame, and a size measured again', () => {
    const level = { member: 'hoop', spot: 'middle' as const, number: 1, distance: 0 };
    const again = { ...(reading(typed(empty, width, '971'), 0) as object), value: 972 } as never;
    const job = withReadings(typed(typed(empty, width, '971'), leg, '660'), [
      { reading: 'level', at: level, value: 1, accuracy: null },
      again,
    ]);
    expect(otherReadings(readingsOf(job), [width, leg])).toEqual([2, 3]);
    expect(otherReadings(readingsOf(job), [leg])).toEqual([0, 2, 3]);
    expect(otherReadings([], [leg])).toEqual([]);
  });
});

describe('the limits that the page knows', () => {
  it('are those of the schema', () => {
    expect(MOST_READINGS).toBe(SCHEMA_MOST);
    expect(CameBack.properties.readings).toMatchObject({ maxItems: MOST_READINGS });
    expect(Fixing).toMatchObject({ maxItems: MOST_FIXINGS });
    const [length] = SizeReading.properties.value.anyOf;
    expect(length).toMatchObject({ maximum: LONGEST_READING });
  });
});
