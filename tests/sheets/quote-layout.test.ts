import { describe, expect, it } from 'vitest';
import { WAY_KEYS } from '../../server/job/closing.ts';
import type { Job } from '../../server/job/job.ts';
import { makeJob, makePlan } from './fixture.ts';
import { option, quotePlan, splice } from './fixture-work.ts';
import { pagesOf } from './laid-pages.ts';
import { covered, crossed, outside } from './layout-faults.ts';

describe('a quote of all that may be in it', () => {
  const quantities = [1, 7, 40, 250, 999, 1000];
  const dear = splice().map((one) => ({ ...one, amount: one.amount === null ? null : one.amount * 123_457 }));
  const options = WAY_KEYS.map((key) => option(key, dear, { examples: 4 }, quantities));
  const terms = Array.from({ length: 12 }, (_, at) => `${String(at)} ${'We stand by what we say. '.repeat(6)}`).join(
    '\n',
  );

  it.each([
    ['a4', 'mm', 'EUR', 2],
    ['letter', 'inch', 'BHD', 3],
    ['a4', 'inch', 'JPY', 0],
  ] as const)('keeps to its pages on %s in %s and %s', (paper, length, currency, minorDigits) => {
    const made = makeJob(38.1, paper);
    const full: Job = {
      ...made,
      units: { ...made.units, length },
      title: 'A boarding frame with a title as long as anybody would care to type it in here',
      customer: 'A customer with a rather long name and two places of business',
      quote: {
        ...made.quote,
        reference: 'Q-2026-000000000000000000000000000000017',
        terms: `${terms} ${'x'.repeat(300)}`,
      },
    };
    for (const name of ['quote', 'quote-working'] as const) {
      const plan = { ...makePlan(), quote: quotePlan(options, { currency, minorDigits }) };
      const laid = pagesOf(name)(plan, full);
      expect(laid.length).toBeGreaterThan(2);
      for (const page of laid) {
        expect(outside(page)).toEqual([]);
        expect(covered(page)).toEqual([]);
        expect(crossed(page)).toEqual([]);
      }
    }
  });
});
