import type { LaidBar, StockLayout } from '../../job/stock.ts';
import type { CutPiece } from '../../plan/stock.ts';
import { barShares } from './bar-shares.ts';
import { barUse } from './bar-use.ts';
import { isSameKind, type BarKind } from './tube-sizes.ts';

/** A piece on a bar is the one of the cut list while its length differs by no more than this [mm]; our own choice: no saw tells it. */
const SAME_LENGTH = 0.05;

/** Bars of a kept layout for one size and grade, against the pieces that there are now. */
export type KeptSize = {
  readonly bars: readonly LaidBar[];
  /** How many pieces differ: missing, too many, of another length, or on a bar that is shorter than what is on it. */
  readonly differ: number;
  /** The first of them, or the bar that overflows; empty where all is well. */
  readonly name: string;
};

/**
 * The bars of a kept layout for one size and grade, checked against the pieces: each must be there exactly so many times,
 * at its length. Pieces of other jobs may lie on the bars as well, but one that holds no piece of this job is not its own.
 *
 * @param quantity how many frames
 */
export function keptSize(layout: StockLayout, kind: BarKind, pieces: readonly CutPiece[], quantity: number): KeptSize {
  const bars = layout.bars.filter((bar) => isSameKind(bar, kind) && bar.pieces.some(({ job }) => job === ''));
  const over = bars.find((bar) => !isFull(bar, layout));
  const lacking = new Map(pieces.map((piece) => [piece.name, piece.count * quantity]));
  const lengths = new Map(pieces.map(({ name, length }) => [name, length.value]));
  let differ = 0;
  let name = '';
  const differs = (other: string, by: number) => {
    differ += by;
    if (name === '') name = other;
  };
  if (over !== undefined) differs(over.name === '' ? 'bar' : over.name, over.pieces.length);
  for (const piece of bars.flatMap((bar) => bar.pieces)) {
    if (piece.job !== '') continue;
    const left = lacking.get(piece.name) ?? 0;
    const length = lengths.get(piece.name);
    const isThere = length !== undefined && left > 0 && Math.abs(length - piece.length) <= SAME_LENGTH;
    if (isThere) lacking.set(piece.name, left - 1);
    else differs(piece.name, 1);
  }
  for (const [missing, count] of lacking) if (count > 0) differs(missing, count);
  return { bars, differ, name };
}

/** Whether the pieces of a bar fit on it. */
const isFull = (bar: LaidBar, { saw }: StockLayout): boolean =>
  barUse({ length: bar.length, pieces: bar.pieces.map(({ length }) => length) }, saw) !== undefined;

/** Own pieces of a layout whose size and grade no piece of the cut list has. */
export const strayPieces = (layout: StockLayout, kinds: readonly BarKind[]): string[] =>
  layout.bars
    .filter((bar) => !kinds.some((kind) => isSameKind(bar, kind)))
    .flatMap(({ pieces }) => pieces.flatMap(({ job, name }) => (job === '' ? [name] : [])));

/**
 * This job's share of the bars of a layout, offcuts credited [minor].
 *
 * @param rates currency of the rates, and what a kept offcut is worth [percent]
 * @returns null while a price is open, or where the layout has prices in another currency: nothing is converted
 */
export function shareOfBars(
  bars: readonly LaidBar[],
  { saw, currency }: StockLayout,
  rates: { readonly currency: string; readonly credit: number | null },
): number | null {
  if (currency !== rates.currency) return null;
  let sum = 0;
  for (const bar of bars) {
    const own = barShares(bar, saw, rates.credit)?.get('');
    if (own === undefined) return null;
    sum += own;
  }
  return sum;
}
