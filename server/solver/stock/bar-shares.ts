import type { SawSettings } from '../../job/rates.ts';
import type { LaidBar } from '../../job/stock.ts';
import { creditOf, worthOf } from './bar-credit.ts';
import { barUse } from './bar-use.ts';

/** What of a bar's price falls to each job on it, by title, the job itself being ''; in the order of the bar [minor]. */
export type BarShares = ReadonlyMap<string, number>;

/**
 * A bar's price, less what its offcut is credited with, shared out over the jobs whose pieces lie on it: each by the length
 * of its pieces with a kerf for each. Whole minor units: what rounding down leaves over goes to the largest remainders
 * first, of equal ones to the job whose piece comes first on the bar, so that the shares add up to the bar and are the same
 * from whichever job they are looked at. Bars cut alike are each shared out by themselves: a job pays so many times its share.
 *
 * @param credit what a kept offcut is worth [percent of its share of the bar]; null: nobody knows
 * @returns null while the price of the bar, or the credit of an offcut that is kept, is open
 */
export function barShares(
  bar: Pick<LaidBar, 'length' | 'price' | 'pieces'>,
  saw: SawSettings,
  credit: number | null,
): BarShares | null {
  const net = netPrice(bar, saw, credit);
  if (net === null) return null;
  const takes = new Map<string, number>();
  for (const { job, length } of bar.pieces) takes.set(job, (takes.get(job) ?? 0) + length + saw.kerf);
  const all = [...takes.values()].reduce((sum, one) => sum + one, 0);
  const parts = [...takes].map(([job, length]) => {
    const exact = all > 0 ? (net * length) / all : 0;
    return { job, whole: Math.floor(exact), rest: exact - Math.floor(exact) };
  });
  const over = net - parts.reduce((sum, { whole }) => sum + whole, 0);
  const first = new Set([...parts].sort((a, b) => b.rest - a.rest).slice(0, Math.max(0, over)));
  return new Map(parts.map((part) => [part.job, part.whole + (first.has(part) ? 1 : 0)]));
}

/** What a bar costs with its kept offcut credited [minor]. */
function netPrice(
  { length, price, pieces }: Pick<LaidBar, 'length' | 'price' | 'pieces'>,
  saw: SawSettings,
  credit: number | null,
): number | null {
  if (price === null) return null;
  const use = barUse({ length, pieces: pieces.map((piece) => piece.length) }, saw);
  if (use?.kept !== true) return price;
  const back = creditOf(worthOf({ price, length }, use.offcut), credit);
  return back === null ? null : price - back;
}
