/**
 * Pieces of one size and grade, and the bars that they may be cut from. Lengths are whole hundredths of a millimetre and
 * costs are whole numbers, so that every answer can be checked exactly.
 */
export type CuttingTask = {
  readonly pieces: readonly { readonly length: number; readonly count: number }[];
  readonly bars: readonly BarKind[];
  /** What a cut takes. */
  readonly kerf: number;
  /** What is cut off every bar before its first piece, the cut with it. */
  readonly endTrim: number;
};

/** Bars that are alike. */
export type BarKind = {
  readonly length: number;
  /** How many there are; null: as many as are wanted. */
  readonly count: number | null;
  readonly cost: number;
};

/** What one bar is cut into: how many of each piece of the task. */
export type Pattern = { readonly bar: number; readonly counts: readonly number[] };

/** The same for patterns that are alike. */
export const keyOf = ({ bar, counts }: Pattern): string => `${String(bar)}:${counts.join(' ')}`;

/** So many bars that are cut alike. */
export type Cut = Pattern & { readonly times: number };

/**
 * What a piece takes of a bar. n pieces need end trim + Σ lengths + (n - 1) kerfs, which is Σ (length + kerf) no more than
 * bar - end trim + kerf: `rooms` of the bars.
 */
export const weightsOf = ({ pieces, kerf }: CuttingTask): number[] => pieces.map(({ length }) => length + kerf);

export const roomsOf = ({ bars, kerf, endTrim }: CuttingTask): number[] =>
  bars.map(({ length }) => length - endTrim + kerf);

/** Something of the bars that are cut, added up: their cost, their length, or one for each. */
export const sumOver = (cuts: readonly Cut[], of: (bar: number) => number): number =>
  cuts.reduce((sum, { bar, times }) => sum + times * of(bar), 0);

/**
 * Cuts that give each piece as often as it is wanted, out of cuts that give it at least as often: what is too many is left
 * on the bar, and a bar that nothing is left of is not cut.
 */
export function trimmedCuts(task: CuttingTask, cuts: readonly Cut[]): Cut[] {
  const left = task.pieces.map(({ count }) => count);
  const trimmed: Cut[] = [];
  for (const { bar, counts, times } of cuts)
    for (let open = times; open > 0;) {
      const kept = counts.map((count, index) => Math.min(count, left[index] ?? 0));
      const alike = Math.min(open, timesWithin(kept, left));
      if (alike === 0) break;
      trimmed.push({ bar, counts: kept, times: alike });
      kept.forEach((count, index) => (left[index] = (left[index] ?? 0) - count * alike));
      open -= alike;
    }
  return trimmed;
}

/** How often a pattern goes into what is still wanted; nothing goes in no times. */
export function timesWithin(counts: readonly number[], left: readonly number[]): number {
  let times = Infinity;
  counts.forEach((count, index) => {
    if (count > 0) times = Math.min(times, Math.floor((left[index] ?? 0) / count));
  });
  return Number.isFinite(times) ? times : 0;
}
