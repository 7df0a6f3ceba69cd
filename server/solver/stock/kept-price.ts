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
  /** Whether some of them are priced by the rates. */
  readonly isRated: boolean;
  /** The value of the size's row of rates that those go by; null where there are none, or no row. */
  readonly by: 'perMetre' | 'perBar' | null;
  /** Whether an offcut is kept, so that the credit counts. */
  readonly isCredited: boolean;
  /** The bars with what they cost now. */
  readonly today: readonly LaidBar[];
  /** Bars of the stock that have no price, or one in another currency than the rates. */
  readonly unpriced: readonly LaidBar[];
  readonly isForeign: boolean;
};

/** Whether amounts of a layout are counted as those of the rates: nothing is converted. */
export const isSameMoney = (
  one: Pick<StockLayout, 'currency' | 'minorDigits'>,
  other: Pick<Rates, 'currency' | 'minorDigits'>,
): boolean => one.currency === other.currency && one.minorDigits === other.minorDigits;

/** Whether a bar is priced by the rates: one that is to be bought, and one of the stock that has no price of its own. */
const isRatedBar = ({ stock, price, remnant }: LaidBar): boolean => stock === '' || (price === null && !remnant);

/**
 * A bar with what it costs now: as the rates say today where it goes by them, a remnant without a price nothing, any other
 * as it was laid out.
 */
export function pricedToday(bar: LaidBar, kind: BarKind, rates: Pick<Rates, 'tubes'>): LaidBar {
  if (!isRatedBar(bar)) return { ...bar, price: bar.price ?? 0 };
  const { rate } = tubeRateOf(rates, kind);
  return { ...bar, price: rate === null ? null : boughtPrice(rate, bar.length).price };
}

/**
 * This job's share of bars of one size and grade.
 *
 * @param kept bars of a layout, as it keeps them
 * @param saw as it is now
 */
export function keptPrice(
  kept: readonly LaidBar[],
  layout: StockLayout,
  asked: { readonly kind: BarKind; readonly rates: PricedBy; readonly saw: SawSettings },
): KeptPrice {
  const { kind, rates, saw } = asked;
  const { rate } = tubeRateOf(rates, kind);
  const bars = kept.map((bar) => pricedToday(bar, kind, rates));
  const rated = kept.find(isRatedBar);
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
    isRated: rated !== undefined,
    by: rated === undefined || rate === null ? null : boughtPrice(rate, rated.length).by,
    isCredited: bars.some(
      ({ length, pieces }) => barUse({ length, pieces: pieces.map((piece) => piece.length) }, saw)?.kept === true,
    ),
    today: bars,
    unpriced: fromStock.filter(({ price }) => price === null),
    isForeign,
  };
}
