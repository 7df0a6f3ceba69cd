import { isPlainObject, type Document } from './check-value.ts';
import { newJob } from './default-job.ts';
import { OPERATIONS, type OwnValue } from './rates.ts';

/**
 * Version 5 had one price of tube, plain rates without a date of their own, and nothing of stock, of the quote or of times
 * taken. What was typed keeps its value and the date of the whole; what stood open stays open; what was not known before
 * stands open too, so that no example comes into a job that has rates of its own.
 */
export function withQuote(document: Document): Document {
  const fresh = newJob('straight');
  const { stock, quote, log } = fresh;
  const { rates } = document;
  const added = { stock, quote, log };
  if (!isPlainObject(rates)) return { ...document, ...added };
  const { date, tubePerMetre, gasPerCubicMetre, labourPerHour, times, ...rest } = rates;
  const since = typeof date === 'string' ? date : '';
  const own = (value: unknown): Document => ({ value: value ?? null, since, example: false });
  const hours = isPlainObject(labourPerHour) ? labourPerHour : {};
  const minutes = isPlainObject(times) ? times : {};
  const { labour, gas, tubes, ...unknown } = fresh.rates;
  return {
    ...document,
    ...added,
    rates: {
      ...opened(unknown),
      ...rest,
      from: since,
      tubes: tubes.map((tube) => ({ ...opened(tube), perMetre: own(tubePerMetre) })),
      gas: { ...opened(gas), rentPerDay: null, perCubicMetre: own(gasPerCubicMetre) },
      fillerPerKilogram: own(rates['fillerPerKilogram']),
      // what nobody was asked for is not charged
      waste: own(0),
      remnantCredit: own(0),
      overhead: own(0),
      margin: own(0),
      tax: own(0),
      abrasivesPerWeld: own(0),
      labour: Object.fromEntries(
        OPERATIONS.map((operation) => {
          const known = minutes[operation];
          const time = isPlainObject(known) ? known : {};
          return [
            operation,
            {
              ...opened(labour[operation]),
              machine: null,
              hour: own(hours[operation]),
              setUp: own(time['setUp']),
              each: own(time['each']),
              perMetre: own(0),
            },
          ];
        }),
      ),
    },
    asTyped: movedTexts(document['asTyped']),
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

function movedTexts(texts: unknown): unknown {
  if (!isPlainObject(texts)) return texts;
  return Object.fromEntries(
    Object.entries(texts).map(([field, text]) => {
      const [pattern, place] = MOVED.find(([from]) => from.test(field)) ?? [];
      return [pattern === undefined || place === undefined ? field : field.replace(pattern, place), text];
    }),
  );
}
