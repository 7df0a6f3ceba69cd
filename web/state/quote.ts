import type { Job } from '../../server/job/job.ts';
import { formatMoney } from '../../server/language/quantity-format.ts';
import { unitWords } from '../../server/language/en/units.ts';
import { words, wordsOf } from '../../server/language/words.ts';
import type { Way } from '../../server/plan/correction.ts';
import type { QuoteBreak, QuoteLine, QuoteOption, QuotePlan } from '../../server/plan/quote.ts';
import { amountText } from '../../server/language/quantity-format.ts';
import { jobQuantity } from './money.ts';
import { valueAt } from './pointer.ts';
import { isExample, ownValues } from './rates.ts';

/** The option that the page shows; undefined where it cannot be made. */
export const shownOption = ({ options, scope }: QuotePlan): QuoteOption | undefined =>
  options.find((option) => option.scope === scope);

type LineName = Pick<QuoteLine, 'key' | 'of' | 'size'>;

export const lineId = ({ key, of }: Pick<QuoteLine, 'key' | 'of'>): string => `${key}/${of}`;

/** How money is written in a quote. */
type Money = Pick<QuotePlan, 'currency' | 'minorDigits'>;

export const moneyText = (minor: number, { currency, minorDigits }: Money): string =>
  formatMoney(minor, currency, minorDigits);

/** The rate of a line: 'EUR 50.00 each h', '10 %', 'open'; empty where an amount is reckoned by a rule of its own. */
export function rateText({ rate, rateUnit, rateField, missing, quantity }: QuoteLine, money: Money): string {
  if (rate === null) return missing.includes(rateField) ? words('price.open') : '';
  if (rateUnit === 'percent') return `${String(rate)} %`;
  const amount = moneyText(rate, money);
  const unit = quantity === null ? '' : unitWords[quantity.unit];
  return unit === '' ? words('price.perOne', { amount }) : words('price.per', { amount, unit });
}

/** What a part of a line's quantity is called, with how much of it. */
export function partText({ key, name, value, unit }: QuoteLine['parts'][number], job: Job): string {
  const said = wordsOf('part', key, { name });
  // words that have no place for a name of its own leave it out
  const named = name === '' || said.includes(name) ? said : `${said} ${name}`;
  return `${named}: ${jobQuantity(value, unit, job)}`;
}

/**
 * The lines of several options as rows of one table, in the order in which they stand: a line that only a later option has
 * comes after the one that it follows there.
 */
export function lineRows(options: readonly QuoteOption[]): readonly LineName[] {
  const rows: LineName[] = [];
  const placeOf = (line: LineName | undefined): number =>
    line === undefined ? -1 : rows.findIndex((row) => lineId(row) === lineId(line));
  for (const { lines } of options) {
    lines.forEach((line, index) => {
      if (placeOf(line) < 0)
        rows.splice(placeOf(lines[index - 1]) + 1, 0, { key: line.key, of: line.of, size: line.size });
    });
  }
  return rows;
}

export const lineOf = ({ lines }: QuoteOption, row: LineName): QuoteLine | undefined =>
  lines.find((line) => lineId(line) === lineId(row));

/**
 * The option that costs least of those that come as near as they must; undefined where there are not two to compare, and
 * where lines of one stand open that is no dearer yet.
 */
export function cheapestOf(
  options: readonly QuoteOption[],
  ways: readonly Pick<Way, 'key' | 'within'>[],
): QuoteOption | undefined {
  const near = options
    .filter(({ scope }) => ways.some(({ key, within }) => key === scope && within))
    .toSorted((one, other) => one.total - other.total || other.open.length - one.open.length);
  return near.length > 1 && near[0]?.open.length === 0 ? near[0] : undefined;
}

/** A sum of lines, so many of which stand open: then it is only the least that it can be. */
export function sumText(minor: number, open: number, minorDigits: number): string {
  const amount = amountText(minor, minorDigits);
  return open === 0 ? amount : `≥ ${amount}`;
}

/** The price of so many frames; undefined while the plan is still for other quantities. */
export const breakOf = ({ breaks }: QuoteOption, quantity: unknown): QuoteBreak | undefined =>
  breaks.find((one) => one.quantity === quantity);

/** Where else an example of a line may be than at its rate: the times of an operation, what is lost of tube. */
function examplePlaces(job: Job, { key, rateField }: QuoteLine): readonly string[] {
  const row = /^(\/rates\/(?:labour|tubes)\/\w+|\/rates\/outside)\//.exec(rateField)?.[1];
  const beside = row === undefined ? [] : ownValues(valueAt(job, row), row).map(({ pointer }) => `${pointer}/value`);
  const ofTube = key === 'tube' || key === 'remnant-credit' ? ['/rates/waste/value', '/rates/remnantCredit/value'] : [];
  const ofGas = key === 'gas' ? ['/rates/gas/restOfBottle/value'] : [];
  // bars that were laid out and are bought go by what the rates say of their size
  const ofBars =
    rateField === '/stock/layout'
      ? job.rates.tubes.map(
          ({ by }, index) => `/rates/tubes/${String(index)}/${by === 'bar' ? 'perBar' : 'perMetre'}/value`,
        )
      : [];
  return [rateField, ...beside, ...ofBars, ...ofTube, ...ofGas];
}

/** The first field of a line of the option that is only an example; empty where there is none. */
export const firstExample = (job: Job, { lines }: QuoteOption): string =>
  lines
    .filter(({ example }) => example)
    .flatMap((line) => examplePlaces(job, line))
    .find((field) => isExample(job, field)) ?? '';

/** The first field that is missing; empty where none is. */
export const firstMissing = ({ lines }: QuoteOption): string =>
  lines.find(({ missing }) => missing.length > 0)?.missing[0] ?? '';

/** Ways that are offered after one of them was ticked or not; those that the plan offers by itself count as ticked. */
export function withOffered(options: readonly QuoteOption[], scope: QuoteOption['scope'], offered: boolean) {
  return options
    .filter((option) => (option.scope === scope ? offered : option.offered))
    .map((option) => option.scope)
    .filter((one) => one !== 'frame');
}
