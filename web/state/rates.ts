import type { Job } from '../../server/job/job.ts';
import type { Operation, OwnValue, Rates } from '../../server/job/rates.ts';
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

const OPERATIONS = ['bend', 'cut', 'fit', 'purge', 'bottle', 'weld', 'finish'] as const satisfies readonly Operation[];

/** Every amount of a job that counts in minor units, # for each row of a list: a test holds it to the schema. */
export const AMOUNTS: readonly string[] = [
  '/rates/tubes/#/perMetre/value',
  '/rates/tubes/#/perBar/value',
  '/rates/gas/perCubicMetre/value',
  '/rates/gas/perBottle/value',
  '/rates/gas/rentPerDay/value',
  '/rates/fillerPerKilogram/value',
  '/rates/abrasivesPerWeld/value',
  ...OPERATIONS.flatMap((operation) => ['hour', 'machine'].map((part) => `/rates/labour/${operation}/${part}/value`)),
  '/rates/outside/setUp/value',
  '/rates/outside/perBend/value',
  '/rates/outside/least/value',
  '/rates/travel/perKilometre/value',
  '/rates/travel/hour/value',
  '/rates/roundTo',
  '/quote/bendersOffer',
  '/stock/layout/bars/#/price',
];

const ROUND_TO = '/rates/roundTo';
const LAYOUT = '/stock/layout';

/** Pointers that a pattern stands for in a job. */
function placesOf(job: Job, pattern: string): readonly string[] {
  const [list = '', rest] = pattern.split('/#');
  if (rest === undefined) return [pattern];
  const rows = valueAt(job, list);
  return Array.isArray(rows) ? rows.map((_, index) => `${list}/${String(index)}${rest}`) : [];
}

/** Whether the bars that are kept have prices in the money of the rates; those in another keep what they have. */
const isLayoutAlike = ({ rates, stock: { layout } }: Job): boolean =>
  layout?.currency === rates.currency && layout.minorDigits === rates.minorDigits;

/**
 * The job with another number of decimals of its money. Amounts keep what they read, 12.50 stays 12.50, rounded where the
 * new money has no such part; nothing is converted. Texts as typed are shown anew.
 */
export function withMinorDigits(job: Job, digits: number): Job {
  const { minorDigits, roundTo } = job.rates;
  const times = 10 ** (digits - minorDigits);
  const alike = isLayoutAlike(job);
  const scaled = (pointer: string, value: number): number => {
    if (pointer !== ROUND_TO) return Math.round(value * times);
    // the finest step of one money is the finest of the other
    return roundTo === 1 ? 1 : Math.max(1, Math.round(roundTo * times));
  };
  const next = AMOUNTS.filter((pattern) => alike || !pattern.startsWith(LAYOUT))
    .flatMap((pattern) => placesOf(job, pattern))
    .reduce((changed, pointer) => {
      const value = valueAt(changed, pointer);
      return typeof value === 'number' ? withChoice(changed, pointer, scaled(pointer, value)) : changed;
    }, job);
  const told = alike ? withValue(next, `${LAYOUT}/minorDigits`, digits) : next;
  return withChoice(told, '/rates/minorDigits', digits);
}

/** Whether rates are in effect on a day; without a day they are. */
export const areInEffect = ({ from, until }: Pick<Rates, 'from' | 'until'>, day: string): boolean =>
  day === '' || ((from === '' || from <= day) && (until === '' || day <= until));

/** The latest day on which any of the values began; empty where none has one. */
export const newestOf = (rates: Rates): string =>
  ownValues(rates).reduce((latest, { own }) => (own.since > latest ? own.since : latest), '');

/** How many values of some rates are only examples. */
export const examplesIn = (rates: Rates): number => ownValues(rates).filter(({ own }) => own.example).length;
