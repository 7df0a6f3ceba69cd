import type { SawSettings } from '../../job/rates.ts';

/**
 * Lengths that were added up may be so much too long for their bar and still fit [mm]: rounding, far finer than a saw
 * cuts.
 */
export const ROUNDING = 1e-6;

/** What becomes of a bar [mm]. Its length is end trim + pieces + kerfs + offcut. */
export type BarUse = {
  /** All kerfs together. The last one is narrower where the saw runs out at the far end. */
  readonly kerfs: number;
  readonly offcut: number;
  /** Whether the offcut is long enough to keep. */
  readonly kept: boolean;
};

/**
 * Bookkeeping of one bar: n pieces take end trim, their sum and n − 1 kerfs, and one kerf more where an offcut is left.
 *
 * @param bar its length, with the lengths of its pieces [mm]
 * @returns undefined where the pieces are longer than the bar
 */
export function barUse(
  bar: { readonly length: number; readonly pieces: readonly number[] },
  { kerf, endTrim, leastRemnant }: SawSettings,
): BarUse | undefined {
  const between = Math.max(0, bar.pieces.length - 1) * kerf;
  const left = bar.length - endTrim - bar.pieces.reduce((sum, length) => sum + length, 0) - between;
  if (left < -ROUNDING) return undefined;
  const last = Math.min(kerf, Math.max(0, left));
  const offcut = left - last <= ROUNDING ? 0 : left - last;
  return { kerfs: between + last, offcut, kept: offcut > 0 && offcut >= leastRemnant };
}

/** The longest piece that a bar gives [mm]; nothing where it is not longer than what is trimmed. */
export const longestOf = (length: number, { endTrim }: Pick<SawSettings, 'endTrim'>): number =>
  Math.max(0, length - endTrim);
