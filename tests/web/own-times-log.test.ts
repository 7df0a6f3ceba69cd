import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import { Job } from '../../server/job/job.ts';
import { OPERATIONS, type OperationRate, type Rates } from '../../server/job/rates.ts';
import { problemsOf } from '../../server/job/validate.ts';
import { plan } from '../../server/solver/plan.ts';
import { ownTimes } from '../../server/solver/quote/own-times.ts';
import { plannedTimes } from '../../server/solver/quote/planned-times.ts';
import { priceOf } from '../../server/solver/quote/price-of.ts';
import { freshTime, plannedOperations, withOwnTime } from '../../web/state/own-times.ts';
import { shownOption } from '../../web/state/quote.ts';
import { jobWith, own, SOME, TYPED } from '../solver/quote/made-up-order.ts';

const job = newJob('hoop');
const quote = plan(job).quote!;
const option = shownOption(quote)!;
const { planned } = quote;
const DAY = '2026-11-26';

describe('a time that is noted', () => {
  it('starts with what the plan has for that work at the moment', () => {
    // two bends of the fresh hoop: 20 min of set-up and 5 min each
    expect(freshTime('bend', DAY, planned)).toEqual({
      operation: 'bend',
      date: DAY,
      count: 2,
      setUp: 20,
      minutes: 10,
      planned: 30,
      process: 0,
    });
  });

  it('has minutes by the metre among those that follow from the work', () => {
    const cut = { ...TYPED.labour.cut, perMetre: own(8) };
    const timed = plannedTimes(SOME, jobWith({ rates: { labour: { ...TYPED.labour, cut } } }));
    // four cuts of 5 min, and half a metre of 8 min
    expect(freshTime('cut', DAY, timed)).toMatchObject({ count: 4, setUp: 10, minutes: 24, planned: 34, process: 4 });
    expect(timed.map(({ operation }) => operation)).toEqual(['bend', 'cut', 'fit', 'purge', 'weld', 'finish']);
  });

  it('starts with nothing where the plan has no line of it or its time stands open, and is one that the job takes', () => {
    const entry = freshTime('weld', DAY, planned);
    expect(entry).toMatchObject({ count: 1, setUp: 0, minutes: 0, planned: 0, process: 0 });
    expect(freshTime('weld', DAY, [])).toEqual(entry);
    const open = { ...TYPED.labour, cut: { ...TYPED.labour.cut, each: own(null) } };
    const timed = plannedTimes(SOME, jobWith({ rates: { labour: open } }));
    expect(freshTime('cut', DAY, timed)).toMatchObject({ count: 4, setUp: 10, minutes: 0, planned: 0 });
    expect(problemsOf(Job, { ...job, log: [entry, freshTime('cut', DAY, planned)] })).toEqual([]);
  });

  it('is of work that the price has a line of; of any where there is none', () => {
    expect(plannedOperations(job, option)).toEqual(['bend', 'cut']);
    expect(plannedOperations(job, undefined)).toHaveLength(7);
  });
});

/** The job after all of its operations were noted as they were planned, and the means taken over. */
function takenOver(before: Job, times: typeof planned): Job {
  const log = times.map(({ operation }) => freshTime(operation, DAY, times));
  expect(problemsOf(Job, { ...before, log })).toEqual([]);
  return ownTimes(log).reduce((changed, mean) => withOwnTime(changed, mean, DAY), before);
}

const minutes = fc.double({ min: 0, max: 60, noNaN: true }).map((value) => Math.round(value * 100) / 100);
const anyTimes: fc.Arbitrary<Rates['labour']> = fc
  .array(fc.tuple(minutes, minutes, minutes), { minLength: 7, maxLength: 7 })
  .map((all) =>
    Object.fromEntries(
      OPERATIONS.map((operation, index): [string, OperationRate] => {
        const [setUp, each, perMetre] = all[index]!;
        return [operation, { ...TYPED.labour[operation], setUp: own(setUp), each: own(each), perMetre: own(perMetre) }];
      }),
    ),
  ) as fc.Arbitrary<Rates['labour']>;

describe('what went exactly as planned', () => {
  it('changes no line of the price when it is taken over', () => {
    fc.assert(
      fc.property(anyTimes, fc.integer({ min: 1, max: 50 }), (labour, quantity) => {
        const before = jobWith({ rates: { labour }, quote: { quantities: [quantity] } });
        const after = takenOver(before, plannedTimes(SOME, before));
        const linesOf = ({ rates }: Job) =>
          priceOf({ quantities: SOME, job: { ...before, rates }, quantity }).lines.map(({ key, amount }) => [
            key,
            amount,
          ]);
        expect(linesOf(after)).toEqual(linesOf(before));
      }),
      { numRuns: 100 },
    );
  });

  it('neither does it in the example, whose work takes time of its own', () => {
    const demo = landingStage();
    const before = plan(demo).quote!;
    expect(before.planned.some(({ process }) => process > 0)).toBe(true);
    const after = plan(takenOver(demo, before.planned)).quote!;
    const linesOf = ({ options, scope }: typeof before) =>
      options.find((one) => one.scope === scope)!.lines.map(({ key, of, amount }) => [key, of, amount]);
    expect(linesOf(after)).toEqual(linesOf(before));
  });
});

describe('the mean of times', () => {
  it('is taken over as the shop own since today, to a hundredth of a minute', () => {
    const log = [
      { ...freshTime('bend', DAY, planned), setUp: 25, minutes: 12 },
      { ...freshTime('bend', DAY, planned), setUp: 30, minutes: 13.5 },
    ];
    const [mean] = plan({ ...job, log }).quote!.own;
    const next = withOwnTime({ ...job, asTyped: { '/rates/labour/bend/each/value': '5' } }, mean!, DAY);
    expect(next.rates.labour.bend).toEqual({
      ...job.rates.labour.bend,
      setUp: { value: 27.5, since: DAY, example: false },
      // (12 + 13.5) min for 4 bends: 6.375
      each: { value: 6.38, since: DAY, example: false },
    });
    expect(next.asTyped).toEqual({});
  });
});
