import type { LaidBar, StockBar, StockLayout } from '../../job/stock.ts';
import { creditOf, worthOf } from './bar-credit.ts';
import { barUse } from './bar-use.ts';
import { isSameMoney, pricedToday, type PricedBy } from './kept-price.ts';

/** A remnant that comes back when bars are taken; its name comes from the book. */
export type Offcut = Omit<StockBar, 'name'>;

/** A length without the rounding of the sum that it comes from [mm]. */
const micrometres = (length: number): number => Math.round(length * 1000) / 1000;

/**
 * The offcuts that a layout leaves long enough to keep, in the order of its bars: one row for bars that are cut alike. Each
 * costs from now on what the job was credited for it, so that no tube is paid for twice. `overfull` is the place of the
 * first entry whose pieces are longer than its bar; null: none is.
 *
 * @param rates of the job that was credited; null: nobody was, and nobody has said what each is worth
 */
export function takingOffcuts(
  layout: StockLayout,
  rates: PricedBy | null = null,
): { readonly offcuts: readonly Offcut[]; readonly overfull: number | null } {
  const { bars, saw, currency, minorDigits } = layout;
  const offcuts: Offcut[] = [];
  for (const [index, bar] of bars.entries()) {
    const { outsideDiameter, wall, grade, heat, length, times, pieces } = bar;
    const use = barUse({ length, pieces: pieces.map((piece) => piece.length) }, saw);
    if (use === undefined) return { offcuts: [], overfull: index };
    const long = micrometres(use.offcut);
    if (!use.kept || long <= 0) continue;
    const tube = { outsideDiameter, wall, grade, heat, length: long };
    offcuts.push({
      ...tube,
      remnant: true,
      count: times,
      price: creditedFor(bar, use.offcut, layout, rates),
      currency,
      minorDigits,
    });
  }
  return { offcuts, overfull: null };
}

/** What one offcut was credited with [minor]; null where a price or the percentage is open, or in another currency. */
function creditedFor(bar: LaidBar, offcut: number, layout: StockLayout, rates: PricedBy | null): number | null {
  if (rates === null || !isSameMoney(layout, rates) || (bar.remnant && bar.price === null)) return null;
  const { price } = pricedToday(bar, bar, rates);
  return price === null ? null : creditOf(worthOf({ price, length: bar.length }, offcut), rates.remnantCredit.value);
}
