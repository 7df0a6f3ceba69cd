import type { Units } from '../../server/job/job.ts';
import type { JobProblem } from '../../server/job/problem.ts';
import type { StockBar } from '../../server/job/stock.ts';
import { lengthForField } from '../../server/language/length-format.ts';
import { parseLength } from '../../server/language/length-text.ts';
import { parseMoney, parseNumber } from '../../server/language/number-text.ts';
import { words } from '../../server/language/words.ts';
import { namesUnit } from './typed-text.ts';

/** The fields of a row of the stock that are typed. */
export const BAR_FIELDS = [
  'name',
  'outsideDiameter',
  'wall',
  'grade',
  'length',
  'count',
  'price',
  'currency',
  'minorDigits',
  'heat',
] as const;
export type BarField = (typeof BAR_FIELDS)[number];

/** A row as it is typed: texts stay as they are, whatever can be made of them. */
export type BarTexts = Readonly<Record<BarField, string>> & { readonly remnant: boolean };

export type BarTroubles = Readonly<Partial<Record<BarField, string>>>;

export type BarReading =
  { readonly ok: true; readonly bar: StockBar } | { readonly ok: false; readonly troubles: BarTroubles };

export const textsOf = (bar: StockBar, units: Units): BarTexts => ({
  name: bar.name,
  remnant: bar.remnant,
  outsideDiameter: lengthForField(bar.outsideDiameter, units),
  wall: lengthForField(bar.wall, units),
  grade: bar.grade,
  length: lengthForField(bar.length, units),
  count: String(bar.count),
  price: bar.price === null ? '' : moneyText(bar.price, bar.minorDigits),
  currency: bar.currency,
  minorDigits: String(bar.minorDigits),
  heat: bar.heat,
});

const moneyText = (minor: number, digits: number): string => (minor / 10 ** digits).toFixed(digits);

/** What a row is priced in: its currency, and how many digits stand after the point. */
export type BarMoney = Pick<StockBar, 'currency' | 'minorDigits'>;

/** What most rows are priced in: what was typed last; where there are none, a currency of hundredths. */
export function moneyTypedLast(rows: readonly { readonly savedAt: string; readonly document: BarMoney }[]): BarMoney {
  const [last] = [...rows].sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1));
  const { currency, minorDigits } = last?.document ?? { currency: 'EUR', minorDigits: 2 };
  return { currency, minorDigits };
}

/** A row to begin with, of the size that is worked on. */
export const freshTexts = (
  like: { readonly outsideDiameter: number; readonly wall: number; readonly grade: string } | null,
  money: BarMoney,
  units: Units,
): BarTexts => ({
  name: '',
  remnant: false,
  outsideDiameter: like === null ? '' : lengthForField(like.outsideDiameter, units),
  wall: like === null ? '' : lengthForField(like.wall, units),
  grade: like?.grade ?? '',
  length: '',
  count: '1',
  price: '',
  currency: money.currency,
  minorDigits: String(money.minorDigits),
  heat: '',
});

/** Lengths that stood in the fields before anybody typed. */
export type LengthsBefore = Readonly<Partial<Record<'outsideDiameter' | 'wall' | 'length', number>>>;

/**
 * What a row says, or what is wrong with it, field by field. What is allowed beyond that, the server says.
 *
 * @param before a text that still stands for one of these is that very length: 1.65 mm read off in inches is no other wall
 */
export function readBar(texts: BarTexts, units: Units, before: LengthsBefore = {}): BarReading {
  const troubles: Partial<Record<BarField, string>> = {};
  const lengthOf = (field: 'outsideDiameter' | 'wall' | 'length'): number => {
    const was = before[field];
    if (was !== undefined && texts[field] === lengthForField(was, units)) return was;
    const read = parseLength(texts[field], units.length);
    if (!read.ok) troubles[field] = words(`length.${read.code}`);
    return read.ok ? read.mm : 0;
  };
  const currency = texts.currency.trim().toUpperCase();
  if (!/^[A-Z]{3}$/.test(currency)) troubles.currency = words('stock.currencyCode');
  const minorDigits = digitsOf(texts.minorDigits, troubles);
  const bar: StockBar = {
    name: texts.name.trim(),
    remnant: texts.remnant,
    outsideDiameter: lengthOf('outsideDiameter'),
    wall: lengthOf('wall'),
    grade: texts.grade.trim(),
    length: lengthOf('length'),
    count: countOf(texts.count, troubles),
    price: priceOf(texts.price, minorDigits, troubles),
    currency,
    minorDigits,
    heat: texts.heat.trim(),
  };
  if (bar.grade === '') troubles.grade = words('stock.gradeWanted');
  return Object.keys(troubles).length === 0 ? { ok: true, bar } : { ok: false, troubles };
}

/** The same texts in other units; what cannot be read, or names a unit of its own, stays as it was typed. */
export function textsInUnits(
  texts: BarTexts,
  { typedIn, units, before }: { readonly typedIn: Units; readonly units: Units; readonly before: LengthsBefore },
): BarTexts {
  if (typedIn.length === units.length) return texts;
  const turned = (field: 'outsideDiameter' | 'wall' | 'length'): string => {
    const was = before[field];
    if (was !== undefined && texts[field] === lengthForField(was, typedIn)) return lengthForField(was, units);
    const read = parseLength(texts[field], typedIn.length);
    return read.ok && !namesUnit(texts[field]) ? lengthForField(read.mm, units) : texts[field];
  };
  return {
    ...texts,
    outsideDiameter: turned('outsideDiameter'),
    wall: turned('wall'),
    length: turned('length'),
  };
}

function countOf(text: string, troubles: Partial<Record<BarField, string>>): number {
  const read = parseNumber(text);
  if (!read.ok) troubles.count = words(`number.${read.code}`);
  else if (read.value < 0 || !Number.isInteger(read.value)) troubles.count = words('stock.countWhole');
  return read.ok ? read.value : 0;
}

/** The most digits that a minor unit has. */
const MOST_DIGITS = 3;

function digitsOf(text: string, troubles: Partial<Record<BarField, string>>): number {
  const read = parseNumber(text);
  const good = read.ok && Number.isInteger(read.value) && read.value >= 0 && read.value <= MOST_DIGITS;
  if (!good) troubles.minorDigits = words('stock.digitsWhole');
  return good ? read.value : 0;
}

function priceOf(text: string, minorDigits: number, troubles: Partial<Record<BarField, string>>): number | null {
  if (text.trim() === '') return null;
  const read = parseMoney(text, minorDigits);
  if (!read.ok) troubles.price = words(`number.${read.code}`);
  return read.ok ? read.value : null;
}

/** What the server could not take, at the fields that it speaks of. */
export function troublesFrom(problems: readonly JobProblem[]): BarTroubles {
  const named = problems.flatMap(({ field, message }) => {
    const key = BAR_FIELDS.find((one) => field === `/${one}` || field.endsWith(`/${one}`));
    return key === undefined ? [] : [[key, message] as const];
  });
  return Object.fromEntries(named);
}

/** What it speaks of that has no field of its own here. */
export const problemsElsewhere = (problems: readonly JobProblem[]): readonly string[] =>
  problems
    .filter(({ field }) => !BAR_FIELDS.some((one) => field === `/${one}` || field.endsWith(`/${one}`)))
    .map(({ message }) => message);
