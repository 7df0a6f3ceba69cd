import type { Rates, TubeRate } from '../../job/rates.ts';
import type { Stock } from '../../job/stock.ts';
import type { CutPiece } from '../../plan/stock.ts';
import { firstFit } from './first-fit.ts';
import { keptSize, shareOfBars } from './kept-layout.ts';
import { bySize, tubeRateOf } from './tube-sizes.ts';

/** The tube of one size and grade that a number of frames takes. */
export type TubeNeed = {
  readonly outsideDiameter: number;
  readonly wall: number;
  readonly grade: string;
  /** Of one frame; length as sawn [mm]. */
  readonly pieces: readonly { readonly name: string; readonly length: number; readonly count: number }[];
  /** Of all frames together [m]. */
  readonly metres: number;
  /** What the shop pays for it, with its field; null where no row is for this size. */
  readonly rate: TubeRate | null;
  readonly field: string;
  /**
   * By first fit into bars as they are bought: how many, and the length of their offcuts that are kept [m]. null where no
   * bar is known or a piece is longer than one.
   */
  readonly bars: { readonly count: number; readonly keptMetres: number } | null;
  /**
   * This job's share of the layout that it keeps, offcuts credited [minor]; the amount is null while a price is open or in
   * another currency. null where no layout is for exactly these pieces, so many times.
   */
  readonly kept: { readonly amount: number | null; readonly bars: number } | null;
};

/**
 * What a number of frames takes in tube, size by size and grade by grade. Light: every way of a correction is priced by it,
 * for each quantity.
 *
 * @param asked pieces of one frame, how many frames, prices, and the stock of the job with its saw and its layout
 */
export function tubeNeeds(asked: {
  readonly pieces: readonly CutPiece[];
  readonly quantity: number;
  readonly rates: Rates;
  readonly stock: Stock;
}): TubeNeed[] {
  const { pieces, quantity, rates, stock } = asked;
  return bySize(pieces).map(({ kind, pieces: own }): TubeNeed => {
    const lengths = own.map(({ name, length, count }) => ({ name, length: length.value, count }));
    const { rate, field } = tubeRateOf(rates, kind);
    const all = lengths.map(({ length, count }) => ({ length, count: count * quantity }));
    const laid = rate === null ? null : firstFit(all, rate.barLength, stock.saw);
    return {
      ...kind,
      pieces: lengths,
      metres: all.reduce((sum, { length, count }) => sum + length * count, 0) / 1000,
      rate,
      field,
      bars:
        laid === null
          ? null
          : {
              count: laid.reduce((sum, { bars }) => sum + bars, 0),
              keptMetres: laid.reduce((sum, { bars, use }) => sum + (use.kept ? bars * use.offcut : 0), 0) / 1000,
            },
      kept: keptOf(stock, { kind, own, quantity }, rates),
    };
  });
}

function keptOf(
  { layout }: Stock,
  { kind, own, quantity }: { kind: Parameters<typeof keptSize>[1]; own: readonly CutPiece[]; quantity: number },
  { currency, remnantCredit }: Rates,
): TubeNeed['kept'] {
  if (layout === null) return null;
  const { bars, differ } = keptSize(layout, kind, own, quantity);
  if (differ > 0) return null;
  return { amount: shareOfBars(bars, layout, { currency, credit: remnantCredit.value }), bars: bars.length };
}
