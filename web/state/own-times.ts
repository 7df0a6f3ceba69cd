import type { Job } from '../../server/job/job.ts';
import type { LogEntry, Operation } from '../../server/job/rates.ts';
import type { OwnTime, PlannedTime, QuoteOption } from '../../server/plan/quote.ts';
import { valueAt } from './pointer.ts';
import { withOwnValue } from './rates.ts';
import { withChoice } from './typed-text.ts';

/** Decimals of a minute: those that are noted, six seconds, and those that a mean is taken over with; our own choice. */
const NOTED = 1;
const TAKEN_OVER = 2;
/** What is added up in a computer: less than a thousandth of a second [min]. */
const EXACT = 6;

const rounded = (minutes: number, decimals: number): number => Math.round(minutes * 10 ** decimals) / 10 ** decimals;

/**
 * A fresh entry: how many and how long the plan has it at this moment, to be typed over with what it really took. Minutes are
 * rounded up to what is noted, and what that adds counts as no handwork: an entry that is left as it is tells the times that
 * the rates have.
 */
export function freshTime(operation: Operation, date: string, planned: readonly PlannedTime[]): LogEntry {
  const found = planned.find((one) => one.operation === operation);
  const setUp = found?.setUp ?? 0;
  const minutes = found?.minutes ?? 0;
  const noted = rounded(Math.ceil(rounded(minutes * 10 ** NOTED, EXACT)) / 10 ** NOTED, NOTED);
  return {
    operation,
    date,
    count: Math.max(1, found?.count ?? 1),
    setUp,
    minutes: noted,
    planned: found?.minutes === null ? 0 : rounded(setUp + noted, EXACT),
    process: rounded((found?.process ?? 0) + noted - minutes, EXACT),
  };
}

/** Operations that the option has a line of, all of them where it has none. */
export function plannedOperations(job: Job, option: QuoteOption | undefined): readonly Operation[] {
  const all = Object.keys(job.rates.labour) as Operation[];
  const planned = all.filter((operation) => option?.lines.some(({ key }) => key === operation) === true);
  return planned.length === 0 ? all : planned;
}

/**
 * The job after one operation's mean times were taken over: they are the shop's own, since today. A mean that is, as far as
 * it is taken over, what the rates have leaves that as it stands there.
 */
export function withOwnTime(job: Job, { operation, setUp, each }: OwnTime, today: string): Job {
  return (
    [
      ['setUp', setUp],
      ['each', each],
    ] as const
  ).reduce((changed, [part, mean]) => {
    const own = `/rates/labour/${operation}/${part}`;
    const was = valueAt(changed, `${own}/value`);
    const same = typeof was === 'number' && Math.abs(was - mean.value) < 0.5 / 10 ** TAKEN_OVER;
    const value = same ? was : rounded(mean.value, TAKEN_OVER);
    return withOwnValue(withChoice(changed, `${own}/value`, value), own, value, today);
  }, job);
}
