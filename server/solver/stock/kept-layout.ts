import type { SawSettings } from '../../job/rates.ts';
import type { LaidBar, StockLayout } from '../../job/stock.ts';
import type { CutPiece } from '../../plan/stock.ts';
import { barsAlike } from './bars-alike.ts';
import { barUse } from './bar-use.ts';
import { isSameKind, type BarKind } from './tube-sizes.ts';

/** A piece on a bar is the one of the cut list while its length differs by no more than this [mm]; our own choice: no saw tells it. */
const SAME_LENGTH = 0.05;

/** Bars of a kept layout for one size and grade, against the pieces that there are now. */
export type KeptSize = {
  /** Bars cut alike are one. */
  readonly bars: readonly LaidBar[];
  /** How many pieces differ: missing, too many, of another length, or on a bar that is shorter than what is on it. */
  readonly differ: number;
  /** The first of them, or the bar that overflows; empty where all is well. */
  readonly name: string;
};

/** What a kept layout is held against. */
type Wanted = {
  readonly kind: BarKind;
  readonly pieces: readonly CutPiece[];
  /** How many frames. */
  readonly quantity: number;
  /** The saw as it is now, which may cut a wider kerf than the one that the bars were laid out for. */
  readonly saw: SawSettings;
};

/**
 * The bars of a kept layout for one size and grade, checked against the pieces: each must be there exactly so many times,
 * at its length. Pieces of other jobs may lie on the bars as well, but one that holds no piece of this job is not its own.
 */
export function keptSize(layout: StockLayout, { kind, pieces, quantity, saw }: Wanted): KeptSize {
  const own = layout.bars.filter((bar) => isSameKind(bar, kind) && bar.pieces.some(({ job }) => job === ''));
  const bars = barsAlike(own);
  const over = bars.filter((bar) => !isRoomOn(bar, saw));
  const lacking = new Map(pieces.map((piece) => [piece.name, piece.count * quantity]));
  const lengths = new Map(pieces.map(({ name, length }) => [name, length.value]));
  let differ = 0;
  let name = '';
  const differs = (other: string, by: number) => {
    differ += by;
    if (name === '' && by > 0) name = other;
  };
  for (const { name: called, times, pieces: on } of over)
    differs(called === '' ? 'bar' : called, times * on.filter(({ job }) => job === '').length);
  for (const { pieces: on, times } of bars)
    for (const piece of on) {
      if (piece.job !== '') continue;
      const left = lacking.get(piece.name) ?? 0;
      const length = lengths.get(piece.name);
      const isOne = length !== undefined && Math.abs(length - piece.length) <= SAME_LENGTH;
      const there = isOne ? Math.min(left, times) : 0;
      if (there > 0) lacking.set(piece.name, left - there);
      differs(piece.name, times - there);
    }
  for (const [missing, count] of lacking) differs(missing, count);
  return { bars, differ, name };
}

/** Whether the pieces of a bar fit on it. */
const isRoomOn = (bar: LaidBar, saw: SawSettings): boolean =>
  barUse({ length: bar.length, pieces: bar.pieces.map(({ length }) => length) }, saw) !== undefined;

/** Own pieces of a layout whose size and grade no piece of the cut list has: the first of them, and how many there are. */
export function strayPieces(layout: StockLayout, kinds: readonly BarKind[]): { name: string; count: number } {
  const stray = layout.bars
    .filter((bar) => !kinds.some((kind) => isSameKind(bar, kind)))
    .flatMap(({ pieces, times }) => pieces.flatMap(({ job, name }) => (job === '' ? [{ name, times }] : [])));
  return { name: stray[0]?.name ?? '', count: stray.reduce((sum, { times }) => sum + times, 0) };
}
