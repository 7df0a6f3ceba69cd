import type { Job } from '../../server/job/job.ts';
import type { LogEntry, Operation } from '../../server/job/rates.ts';
import type { OwnTime, QuoteOption } from '../../server/plan/quote.ts';
import { withOwnValue } from './rates.ts';
import { withChoice } from './typed-text.ts';

/** Decimals of a minute that are noted and taken over: six seconds; our own choice. */
const DECIMALS = 1;
const toNote = (minutes: number): number => Math.round(minutes * 10 ** DECIMALS) / 10 ** DECIMALS;

/** A fresh entry: how many and how long the plan has it at this moment, to be typed over with what it really took. */
export function freshTime(operation: Operation, date: string, option: QuoteOption | undefined): LogEntry {
  const quantity = option?.lines.find(({ key }) => key === operation)?.quantity ?? null;
  const inputOf = (name: string): number => quantity?.working.inputs.find((input) => input.name === name)?.value ?? 0;
  // a line of labour is told in hours
  const planned = quantity === null ? 0 : toNote(quantity.value * 60);
  const setUp = Math.min(planned, toNote(inputOf('set-up-time')));
  return {
    operation,
    date,
    count: Math.max(1, Math.round(inputOf(`count-${operation}`))),
    setUp,
    minutes: toNote(planned - setUp),
    planned,
    process: toNote(inputOf('process-time')),
  };
}

/** Operations that the option has a line of, all of them where it has none. */
export function plannedOperations(job: Job, option: QuoteOption | undefined): readonly Operation[] {
  const all = Object.keys(job.rates.labour) as Operation[];
  const planned = all.filter((operation) => option?.lines.some(({ key }) => key === operation) === true);
  return planned.length === 0 ? all : planned;
}

/** The job after one operation's mean times were taken over: they are the shop's own, since today. */
export function withOwnTime(job: Job, { operation, setUp, each }: OwnTime, today: string): Job {
  return (
    [
      ['setUp', setUp],
      ['each', each],
    ] as const
  ).reduce((changed, [part, { value }]) => {
    const own = `/rates/labour/${operation}/${part}`;
    return withOwnValue(withChoice(changed, `${own}/value`, toNote(value)), own, toNote(value), today);
  }, job);
}
