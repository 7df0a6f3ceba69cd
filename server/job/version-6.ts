import { isPlainObject, type Document } from './check-value.ts';
import { newJob } from './default-job.ts';
import { DAY, OPERATIONS, type OwnValue } from './rates.ts';

/**
 * Version 5 had one price of tube, plain rates with one date for all, and nothing of stock, of the quote or of times taken.
 * What was typed keeps its value and that date; what stood open stays open; what was not known before stands open too, or
 * is not charged where it would be put on top of everything, so that no example comes into a job that has rates of its own.
 */
export function withQuote(document: Document): Document {
  const { stock, quote, log, rates: fresh } = newJob('straight');
  const { rates } = document;
  const added = { stock, quote, log };
  if (!isPlainObject(rates)) return { ...document, ...added };
  const { date, tubePerMetre: _tube, gasPerCubicMetre: _gas, labourPerHour, times, ...rest } = rates;
  const since = typeof date === 'string' && isDay(date) ? date : '';
  const moved = (name: string) => own(rates, name, since);
  const typed = (value: number | null): OwnValue => ({ value, since, example: false });
  // what every version had is never made up where it is missing
  const { labour: _labour, from: _from, currency: _currency, minorDigits: _digits, gas, tubes, ...unknown } = fresh;
  return {
    ...document,
    ...added,
    rates: {
      ...opened(unknown),
      ...rest,
      ...(date === undefined ? {} : { from: firstDay(date) }),
      tubes: tubes.map((tube) => ({ ...opened(tube), perMetre: moved('tubePerMetre') })),
      gas: {
        ...opened(gas),
        rentPerDay: null,
        restOfBottle: typed(0),
        perCubicMetre: moved('gasPerCubicMetre'),
      },
      fillerPerKilogram: moved('fillerPerKilogram'),
      // nobody was asked for these: nothing is charged for them
      waste: typed(0),
      remnantCredit: typed(0),
      overhead: typed(0),
      margin: typed(0),
      tax: typed(0),
      abrasivesPerWeld: typed(0),
      ...labourOf(labourPerHour, times, since),
    },
    asTyped: movedTexts(document['asTyped'], date),
  };
}

const isDay = (date: unknown): boolean => typeof date === 'string' && new RegExp(DAY, 'u').test(date);

/** The date was any text of so many letters. */
const LONGEST_DATE = 10;

/** A text that was no day is one that cannot be read; anything else that is none is refused as it stands. */
const firstDay = (date: unknown): unknown =>
  typeof date !== 'string' || isDay(date) || date.length > LONGEST_DATE ? date : '';

/** A value with its date; one that is missing stays missing, to be refused by the check of the whole. */
function own(rates: Document, name: string, since: string): Document {
  const rest = { since, example: false };
  return Object.hasOwn(rates, name) ? { value: rates[name], ...rest } : rest;
}

/** Changing bottles was not known. */
const NEW_OPERATION = { hour: null, setUp: null, each: null };

/** Hours and times of each operation. Damage in them stays damage, to be refused where it stands now. */
function labourOf(hours: unknown, times: unknown, since: string): Document {
  if (!isPlainObject(hours)) return hours === undefined ? {} : { labour: hours };
  if (!isPlainObject(times)) return times === undefined ? {} : { labour: times };
  const operations = [...new Set([...OPERATIONS, ...Object.keys(hours), ...Object.keys(times)])];
  const labour = operations.map((operation) => [operation, operationOf(operation, hours, times, since)] as const);
  return { labour: Object.fromEntries(labour.filter(([, rate]) => rate !== undefined)) };
}

function operationOf(operation: string, hours: Document, times: Document, since: string): unknown {
  const isNew = operation === 'bottle' && !Object.hasOwn(hours, operation) && !Object.hasOwn(times, operation);
  const time = isNew ? NEW_OPERATION : times[operation];
  if (!isPlainObject(time)) return time;
  const { setUp: _setUp, each: _each, hour: _hour, ...unknown } = time;
  return {
    hour: isNew ? own(NEW_OPERATION, 'hour', since) : own(hours, operation, since),
    machine: null,
    setUp: own(time, 'setUp', since),
    each: own(time, 'each', since),
    perMetre: { value: 0, since, example: false },
    ...unknown,
  };
}

const isOwn = (value: unknown): value is OwnValue =>
  isPlainObject(value) && 'example' in value && 'since' in value && 'value' in value;

/** Starting values with every example taken out. */
function opened(value: Document): Document {
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) => {
      if (isOwn(each)) return [key, { value: null, since: '', example: false }];
      return [key, isPlainObject(each) ? opened(each) : each];
    }),
  );
}

/** Where each field is found now. */
const MOVED: readonly (readonly [RegExp, string])[] = [
  [/^\/rates\/tubePerMetre$/, '/rates/tubes/0/perMetre/value'],
  [/^\/rates\/gasPerCubicMetre$/, '/rates/gas/perCubicMetre/value'],
  [/^\/rates\/fillerPerKilogram$/, '/rates/fillerPerKilogram/value'],
  [/^\/rates\/labourPerHour\/(\w+)$/, '/rates/labour/$1/hour/value'],
  [/^\/rates\/times\/(\w+)\/(\w+)$/, '/rates/labour/$1/$2/value'],
  [/^\/rates\/date$/, '/rates/from'],
];

/** Texts by the fields that they are found at now; a date that was no day is kept as the text that it was. */
function movedTexts(texts: unknown, date: unknown): unknown {
  if (!isPlainObject(texts)) return texts;
  const moved = Object.fromEntries(
    Object.entries(texts).map(([field, text]) => {
      const [pattern, place] = MOVED.find(([before]) => before.test(field)) ?? [];
      return [pattern === undefined || place === undefined ? field : field.replace(pattern, place), text];
    }),
  );
  return typeof date !== 'string' || isDay(date) ? moved : { '/rates/from': date, ...moved };
}
