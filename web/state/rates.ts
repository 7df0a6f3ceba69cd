import type { Job } from '../../server/job/job.ts';
import type { OwnValue, Rates } from '../../server/job/rates.ts';
import { wallClockNow } from './level-age.ts';
import { valueAt, withValue } from './pointer.ts';
import { withChoice } from './typed-text.ts';

/** The day on the calendar where the person is: '2026-11-26'. */
export const todayHere = (): string => wallClockNow().slice(0, 10);

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A value of the shop's own: with since when it has been so, and whether it is only an example. */
export const isOwnValue = (value: unknown): value is OwnValue =>
  isPlain(value) && 'value' in value && 'since' in value && 'example' in value;

/** Pointer of the value of the shop's own whose number a field is; empty for every other field. */
export const ownOf = (pointer: string): string => /^(\/rates\/.+)\/value$/.exec(pointer)?.[1] ?? '';

/** Whether a field shows a number that is only an example. */
export function isExample(job: Job, pointer: string): boolean {
  const own = ownOf(pointer);
  const value = own === '' ? undefined : valueAt(job, own);
  return isOwnValue(value) && value.example;
}

/**
 * The job after a number was typed or chosen: it is no example any more, and has been so since today. What stands open has
 * no day. A number that was the shop's own already and stays as it is keeps its day.
 *
 * @param pointer the field that was written, of whatever part of the job
 * @param today ISO 8601
 */
export function withMarks(before: Job, after: Job, pointer: string, today: string): Job {
  const own = ownOf(pointer);
  if (own === '') return after;
  const [was, now] = [valueAt(before, own), valueAt(after, own)];
  if (!isOwnValue(was) || !isOwnValue(now)) return after;
  if (!was.example && Object.is(was.value, now.value)) return after;
  return withOwnValue(after, own, now.value, today);
}

/** The job with a value of the shop's own; a text that was typed for it stays. */
export const withOwnValue = (job: Job, own: string, value: number | null, today: string): Job =>
  withValue(job, own, { value, since: value === null ? '' : today, example: false } satisfies OwnValue);

/** A value that nobody knows yet. */
export const OPEN: OwnValue = { value: null, since: '', example: false };

/** Every value of the shop's own in some rates, by its pointer within them. */
export function ownValues(value: unknown, at = ''): readonly { readonly pointer: string; readonly own: OwnValue }[] {
  if (isOwnValue(value)) return [{ pointer: at, own: value }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => ownValues(inner, `${at}/${key}`));
}

/** Amounts that the currency's minor unit is the unit of: pointers in the job. */
function amountsOf(job: Job): readonly string[] {
  const { tubes, gas, labour } = job.rates;
  return [
    ...tubes.flatMap((_, index) => [
      `/rates/tubes/${String(index)}/perMetre/value`,
      `/rates/tubes/${String(index)}/perBar/value`,
    ]),
    '/rates/gas/perCubicMetre/value',
    '/rates/gas/perBottle/value',
    ...(gas.rentPerDay === null ? [] : ['/rates/gas/rentPerDay/value']),
    '/rates/fillerPerKilogram/value',
    '/rates/abrasivesPerWeld/value',
    ...Object.entries(labour).flatMap(([operation, { machine }]) => [
      `/rates/labour/${operation}/hour/value`,
      ...(machine === null ? [] : [`/rates/labour/${operation}/machine/value`]),
    ]),
    ...['setUp', 'perBend', 'least'].map((part) => `/rates/outside/${part}/value`),
    '/rates/travel/perKilometre/value',
    '/rates/travel/hour/value',
    '/quote/bendersOffer',
  ];
}

/**
 * The job with another number of decimals of its money. Amounts keep what they read, 12.50 stays 12.50, rounded where the
 * new money has no such part; nothing is converted. Texts as typed are shown anew.
 */
export function withMinorDigits(job: Job, digits: number): Job {
  const times = 10 ** (digits - job.rates.minorDigits);
  const next = amountsOf(job).reduce((changed, pointer) => {
    const value = valueAt(changed, pointer);
    return typeof value === 'number' ? withChoice(changed, pointer, Math.round(value * times)) : changed;
  }, job);
  const roundTo = Math.max(1, Math.round(job.rates.roundTo * times));
  // the finest step of one money is the finest of the other
  const finest = job.rates.roundTo === 1 ? 1 : roundTo;
  return withChoice(withChoice(next, '/rates/roundTo', finest), '/rates/minorDigits', digits);
}

/** Whether rates are in effect on a day; without a day they are. */
export const areInEffect = ({ from, until }: Pick<Rates, 'from' | 'until'>, day: string): boolean =>
  day === '' || ((from === '' || from <= day) && (until === '' || day <= until));

/** The latest day on which any of the values began; empty where none has one. */
export const newestOf = (rates: Rates): string =>
  ownValues(rates).reduce((latest, { own }) => (own.since > latest ? own.since : latest), '');

/** Gas that is charged by what is used needs another price than gas by the bottle: the list of examples that are left. */
export const examplesIn = (rates: Rates): number => ownValues(rates).filter(({ own }) => own.example).length;
