import type { Units } from '../../server/job/job.ts';
import { formatLength } from '../../server/language/length-format.ts';
import { formatMoney } from '../../server/language/quantity-format.ts';
import { words } from '../../server/language/words.ts';
import type { Nesting, NestingResult } from '../../server/nesting/nesting.ts';

/** The money that a layout is in. */
export type Money = { readonly currency: string; readonly minorDigits: number };

export const moneyWords = (minor: number, { currency, minorDigits }: Money): string =>
  formatMoney(minor, currency, minorDigits);

export const barCount = (count: number): string =>
  count === 1 ? words('stock.oneBar') : words('stock.barCount', { count });

/** How far a search is: 'Laying out 12 pieces. Best so far: 4 bars, EUR 360.00. It cannot be less than EUR 340.00.' */
export function progressWords({ state, pieces, best }: Nesting, money: Money): string {
  if (state === 'waiting') return words('nesting.waiting');
  const running = words('nesting.running', { pieces });
  if (best === null) return running;
  const bars = barCount(best.bars);
  const found =
    best.cost === null
      ? words('nesting.bestSoFar', { bars })
      : words('nesting.bestCost', { bars, cost: moneyWords(best.cost, money) });
  const bound = best.bound === null ? '' : words('nesting.bound', { bound: moneyWords(best.bound, money) });
  return [running, found, bound].filter((part) => part !== '').join(' ');
}

type Size = NestingResult['sizes'][number];

/** How far from the best the bars of a size may be: a gap is told rounded up, so that it is never told too small. */
export function goodnessWords({ proven, gap, cost }: Size): string {
  if (proven) return words('nesting.proven');
  if (cost === null || gap === null) return words('nesting.bestOnly');
  return words('nesting.gap', { gap: (Math.ceil(gap * 10 - 1e-9) / 10).toFixed(1) });
}

/** Which bars of the stock nothing was sought on, by the money that they are priced in; empty: there are none. */
export function leftOutWords(leftOut: NestingResult['leftOut'], money: Money): string {
  const bars = leftOut.map(({ name, currency, minorDigits }) => {
    const said = { name: name || words('stock.unnamed'), currency };
    return currency === money.currency
      ? words('nesting.leftOutDigits', { ...said, digits: minorDigits })
      : words('nesting.leftOutBar', said);
  });
  return bars.length === 0 ? '' : words('nesting.leftOut', { bars: bars.join('; ') });
}

/** What is said of a piece that fits on no bar. */
export function overlongWords({ job, name, length, longest }: NestingResult['overlong'][number], units: Units): string {
  const said = { name: job === '' ? name : words('nesting.ofJob', { name, job }), length: formatLength(length, units) };
  return longest > 0
    ? words('nesting.overlong', { ...said, longest: formatLength(longest, units) })
    : words('nesting.overlongNoBar', said);
}
