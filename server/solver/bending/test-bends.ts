/** One test bend: commanded and measured angle, both in the same unit. */
export type TestBend = { readonly commanded: number; readonly measured: number };

/**
 * Springback on the commanded angle, s = c − m = a + b c: `fixed` a [unit of the angles], `share` b [–]. `standing`
 * gives the ± of s at a commanded angle for a ± of 1 in each measured one.
 */
export type SpringbackFit = {
  readonly fixed: number;
  readonly share: number;
  readonly standing: (commanded: number) => number;
};

/**
 * Least squares of s = a + b c on the commanded angle: a fixed and a proportional springback, as US patent
 * 3,821,525 (1974) corrects for. Undefined when there are fewer than two different commanded angles.
 */
export function fitTestBends(bends: readonly TestBend[]): SpringbackFit | undefined {
  const meanC = bends.reduce((sum, b) => sum + b.commanded, 0) / bends.length;
  const meanS = bends.reduce((sum, b) => sum + b.commanded - b.measured, 0) / bends.length;
  const spread = bends.reduce((sum, b) => sum + (b.commanded - meanC) ** 2, 0);
  if (!(spread > 0)) return undefined;
  const share = bends.reduce((sum, b) => sum + (b.commanded - meanC) * (b.commanded - b.measured - meanS), 0) / spread;
  // variance of a fitted straight line: σ² (1/n + (c − c̄)²/S)
  const standing = (commanded: number) => Math.sqrt(1 / bends.length + (commanded - meanC) ** 2 / spread);
  return { fixed: meanS - share * meanC, share, standing };
}

/** Angle to command for a wanted one: c = (w + a) / (1 − b). */
export const commandFor = (wanted: number, fit: { readonly fixed: number; readonly share: number }): number =>
  (wanted + fit.fixed) / (1 - fit.share);
