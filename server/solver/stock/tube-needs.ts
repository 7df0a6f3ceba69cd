import type { Rates, SawSettings, TubeRate } from '../../job/rates.ts';
import type { StockLayout } from '../../job/stock.ts';
import type { CutPiece } from '../../plan/stock.ts';
import { once } from '../once.ts';
import { begun, firstFit } from './first-fit.ts';
import { keptSize } from './kept-layout.ts';
import { keptPrice, type KeptPrice } from './kept-price.ts';
import { bySize, tubeRateOf, type BarKind } from './tube-sizes.ts';

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
   * By first fit into bars as they are bought: how many, and the length of their offcuts that are kept [mm]. null where no
   * bar is known or a piece is longer than one.
   */
  readonly bars: { readonly count: number; readonly keptLength: number } | null;
  /** This job's share of a layout that is kept; null where none is for exactly these pieces, so many times. */
  readonly kept: KeptPrice | null;
};

/**
 * What a number of frames takes in tube, size by size and grade by grade. Light: every way of a correction is priced by it,
 * for each quantity.
 *
 * @param asked pieces of one frame, how many frames, prices, the saw; and the layout that the tube is priced by where it is
 *   for exactly these pieces, null where none counts
 */
export function tubeNeeds(asked: {
  readonly pieces: readonly CutPiece[];
  readonly quantity: number;
  readonly rates: Rates;
  readonly saw: SawSettings;
  readonly layout: StockLayout | null;
}): TubeNeed[] {
  const { pieces, quantity, rates, saw } = asked;
  return sizedOnce(pieces).map(({ kind, pieces: own, lengths, total }): TubeNeed => {
    const { rate, field } = tubeRateOf(rates, kind);
    // tube that goes by the metre is never laid into bars
    const bars = once(() => {
      const all = lengths.map(({ length, count }) => ({ length, count: count * quantity }));
      const laid = rate === null ? null : firstFit(all, rate.barLength, saw);
      return laid === null ? null : begun(laid);
    });
    return {
      outsideDiameter: kind.outsideDiameter,
      wall: kind.wall,
      grade: kind.grade,
      pieces: lengths,
      metres: (total * quantity) / 1000,
      rate,
      field,
      get bars() {
        return bars();
      },
      kept: keptOf({ kind, pieces: own }, asked),
    };
  });
}

/** Pieces of one size and grade in plain numbers, and what one frame takes of them [mm]. */
type Sized = {
  readonly kind: BarKind;
  readonly pieces: readonly CutPiece[];
  readonly lengths: TubeNeed['pieces'];
  readonly total: number;
};

/** What was told apart already: the same cut list is priced for many numbers of frames. */
const KNOWN = new WeakMap<readonly CutPiece[], readonly Sized[]>();

function sizedOnce(pieces: readonly CutPiece[]): readonly Sized[] {
  const known = KNOWN.get(pieces);
  if (known !== undefined) return known;
  const sized = bySize(pieces).map(({ kind, pieces: own }): Sized => {
    const lengths = own.map(({ name, length, count }) => ({ name, length: length.value, count }));
    return { kind, pieces: own, lengths, total: lengths.reduce((sum, { length, count }) => sum + length * count, 0) };
  });
  KNOWN.set(pieces, sized);
  return sized;
}

function keptOf(
  { kind, pieces }: { readonly kind: BarKind; readonly pieces: readonly CutPiece[] },
  { layout, quantity, saw, rates }: Parameters<typeof tubeNeeds>[0],
): KeptPrice | null {
  if (layout === null) return null;
  const { bars, differ } = keptSize(layout, { kind, pieces, quantity, saw });
  if (differ > 0) return null;
  return keptPrice(bars, layout, { kind, rates, saw });
}
