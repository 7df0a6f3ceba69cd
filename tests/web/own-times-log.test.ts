import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job } from '../../server/job/job.ts';
import { problemsOf } from '../../server/job/validate.ts';
import { plan } from '../../server/solver/plan.ts';
import { freshTime, plannedOperations, withOwnTime } from '../../web/state/own-times.ts';
import { shownOption } from '../../web/state/quote.ts';

const job = newJob('hoop');
const option = shownOption(plan(job).quote!)!;
const DAY = '2026-11-26';

describe('a time that is noted', () => {
  it('starts with what the plan has for that work at the moment', () => {
    // two bends of the fresh hoop: 20 min of set-up and 5 min each
    expect(freshTime('bend', DAY, option)).toEqual({
      operation: 'bend',
      date: DAY,
      count: 2,
      setUp: 20,
      minutes: 10,
      planned: 30,
      process: 0,
    });
  });

  it('starts with nothing where the plan has no line of it, and is one that the job takes', () => {
    const entry = freshTime('weld', DAY, option);
    expect(entry).toMatchObject({ count: 1, setUp: 0, minutes: 0, planned: 0, process: 0 });
    expect(freshTime('weld', DAY, undefined)).toEqual(entry);
    expect(problemsOf(Job, { ...job, log: [entry, freshTime('cut', DAY, option)] })).toEqual([]);
  });

  it('is of work that the price has a line of; of any where there is none', () => {
    expect(plannedOperations(job, option)).toEqual(['bend', 'cut']);
    expect(plannedOperations(job, undefined)).toHaveLength(7);
  });
});

describe('the mean of times', () => {
  it('is taken over as the shop own since today, to a tenth of a minute', () => {
    const log = [
      { ...freshTime('bend', DAY, option), setUp: 25, minutes: 12 },
      { ...freshTime('bend', DAY, option), setUp: 30, minutes: 13.5 },
    ];
    const [own] = plan({ ...job, log }).quote!.own;
    const next = withOwnTime({ ...job, asTyped: { '/rates/labour/bend/each/value': '5' } }, own!, DAY);
    expect(next.rates.labour.bend).toEqual({
      ...job.rates.labour.bend,
      setUp: { value: 27.5, since: DAY, example: false },
      // (12 + 13.5) min for 4 bends
      each: { value: 6.4, since: DAY, example: false },
    });
    expect(next.asTyped).toEqual({});
  });
});
