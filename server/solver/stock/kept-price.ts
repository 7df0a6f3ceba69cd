import type { Rates, SawSettings } from '../../job/rates.ts';
import type { LaidBar, StockLayout } from '../../job/stock.ts';
import { wholeMinor } from '../quote/minor-units.ts';
import { barShares } from './bar-shares.ts';
import { barsTogether } from './bars-alike.ts';
import { barUse } from './bar-use.ts';
import { boughtPrice } from './bought-price.ts';
import { tubeRateOf, type BarKind } from './tube-sizes.ts';

/** What bars are priced by beside their own prices. */
export type PricedBy = Pick<Rates, 'tubes' | 'remnantCredit' | 'currency' | 'minorDigits'>;

/** This job's share of the bars of a kept layout, and what it hangs on. */
export type KeptPrice = {
  /** Offcuts credited [minor]; null while something is missing, or where it is more than can be counted. */
  readonly amount: number | null;
  /** How many bars. */
  readonly bars: number;
  /** Whether some of them are to be bought. */
  readonly isBought: boolean;
  /** The value of the size's row of rates that bars to be bought go by; null where none are bought or no row is. */
  readonly by: 'perMetre' | 'perBar' | null;
  /** Whether an offcut is kept, so that the credit counts. */
  readonly isCredited: boolean;
  /** Bars of the stock that have no price, or one in another currency than the rates. */
  readonly unpriced: readonly LaidBar[];
  readonly isForeign: boolean;
};

/** Whether amounts of a layout are counted as those of the rates: nothing is converted. */
export const isSameMoney = (
  one: Pick<StockLayout, 'currency' | 'minorDigits'>,
  other: Pick<Rates, 'currency' | 'minorDigits'>,
): boolean => one.currency === other.currency && one.minorDigits === other.minorDigits;

/** A bar with what it costs now: one that is to be bought as the rates say today, one of the stock as it was laid out. */
export function pricedToday(bar: LaidBar, kind: BarKind, rates: Pick<Rates, 'tubes'>): LaidBar {
  if (bar.stock !== '') return bar;
  const { rate } = tubeRateOf(rates, kind);
  return { ...bar, price: rate === null ? null : boughtPrice(rate, bar.length).price };
}

/**
 * This job's share of bars of one size and grade.
 *
 * @param bars of a layout that is kept, those that are bought at today's price (`pricedToday`)
 * @param saw as it is now
 */
export function keptPrice(
  bars: readonly LaidBar[],
  layout: StockLayout,
  asked: { readonly kind: BarKind; readonly rates: PricedBy; readonly saw: SawSettings },
): KeptPrice {
  const { kind, rates, saw } = asked;
  const { rate } = tubeRateOf(rates, kind);
  const bought = bars.find(({ stock }) => stock === '');
  const fromStock = bars.filter(({ stock }) => stock !== '');
  const isForeign = fromStock.length > 0 && !isSameMoney(layout, rates);
  const shares = bars.map((bar) => {
    const own = barShares(bar, saw, rates.remnantCredit.value)?.get('');
    return own === undefined ? null : own * bar.times;
  });
  const isOpen = isForeign || shares.includes(null);
  return {
    amount: isOpen ? null : wholeMinor(shares.reduce<number>((sum, share) => sum + (share ?? 0), 0)),
    bars: barsTogether(bars),
    isBought: bought !== undefined,
    by: bought === undefined || rate === null ? null : boughtPrice(rate, bought.length).by,
    isCredited: bars.some(
      ({ length, pieces }) => barUse({ length, pieces: pieces.map((piece) => piece.length) }, saw)?.kept === true,
    ),
    unpriced: fromStock.filter(({ price }) => price === null),
    isForeign,
  };
}
