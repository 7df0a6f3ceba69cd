import type { SawSettings } from '../../job/rates.ts';
import { barUse, longestOf, ROUNDING, type BarUse } from './bar-use.ts';

/** Pieces of one length [mm]. */
export type Lengths = { readonly length: number; readonly count: number };

/** So many bars that are cut alike: on each of them the pieces of `lengths` by their place in the list. */
export type CutAlike = {
  readonly bars: number;
  readonly on: readonly { readonly index: number; readonly count: number }[];
  readonly use: BarUse;
};

/**
 * Lays pieces into bars of one length by first fit, the longest first: each goes on the first bar that still has room.
 * With bars that are all alike this fills one bar after the other with the longest that still fits, so that bars cut alike
 * are found at once and a thousand frames take no longer than one.
 *
 * It is never more than 11/9 of the fewest bars and 6/9 of a bar (Dósa 2007; from memory). A wider kerf may need fewer bars
 * here by chance, as any change of lengths may; the fewest possible never gets less.
 *
 * @returns bars in the order in which they are begun; null where a piece is longer than a bar gives
 */
export function firstFit(lengths: readonly Lengths[], bar: number, saw: SawSettings): CutAlike[] | null {
  const most = longestOf(bar, saw);
  if (lengths.some(({ length, count }) => count > 0 && length > most + ROUNDING)) return null;
  const order = lengths.map((_, index) => index).sort((a, b) => lengthAt(lengths, b) - lengthAt(lengths, a));
  const left = lengths.map(({ count }) => count);
  const found: CutAlike[] = [];
  for (;;) {
    const on = filled(lengths, order, left, most, saw.kerf);
    if (on.length === 0) return found;
    const bars = Math.min(...on.map(({ index, count }) => Math.floor((left[index] ?? 0) / count)));
    for (const { index, count } of on) left[index] = (left[index] ?? 0) - bars * count;
    const pieces = on.flatMap(({ index, count }) => Array.from({ length: count }, () => lengthAt(lengths, index)));
    // what was laid fits, so that rounding alone could say otherwise
    const use = barUse({ length: bar, pieces }, saw) ?? {
      kerfs: (pieces.length - 1) * saw.kerf,
      offcut: 0,
      kept: false,
    };
    found.push({ bars, on, use });
  }
}

/** How many bars are begun, and the length of their offcuts that are kept [mm]. */
export const begun = (laid: readonly CutAlike[]): { readonly count: number; readonly keptLength: number } => ({
  count: laid.reduce((sum, { bars }) => sum + bars, 0),
  keptLength: laid.reduce((sum, { bars, use }) => sum + (use.kept ? bars * use.offcut : 0), 0),
});

const lengthAt = (lengths: readonly Lengths[], index: number): number => lengths[index]?.length ?? 0;

/** What goes on the next bar: of each length, the longest first, as many as there are and as have room. */
function filled(
  lengths: readonly Lengths[],
  order: readonly number[],
  left: readonly number[],
  most: number,
  kerf: number,
): { index: number; count: number }[] {
  const on: { index: number; count: number }[] = [];
  // every piece takes its kerf along, which the last one may leave off the bar
  let room = most + kerf + ROUNDING;
  for (const index of order) {
    const takes = lengthAt(lengths, index) + kerf;
    const there = left[index] ?? 0;
    const count = takes > 0 ? Math.min(there, Math.floor(room / takes)) : there;
    if (count <= 0) continue;
    on.push({ index, count });
    room -= count * takes;
  }
  return on;
}
