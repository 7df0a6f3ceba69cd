/**
 * A tube that argon sweeps from end to end, solved cell by cell: finite volumes with central faces, Crank and Nicolson
 * in time. Metres and seconds. The air left is 1 everywhere at first; at the feed nothing but gas comes in, and what
 * diffuses back is carried in again; at the far end it has no gradient (Danckwerts' closed ends).
 */
export type Column = {
  /** Length of the whole bore [m], mean speed [m/s] and dispersion along it [m²/s]. */
  readonly length: number;
  readonly speed: number;
  readonly dispersion: number;
  /** Share of it at the feed that is well mixed; the rest is the column that is solved. */
  readonly mixed: number;
};

/**
 * When the air left at a place falls to each of some shares [s].
 *
 * @param shares of what was there at first, the largest first
 * @param at place along the solved column, 1 is its far end
 */
export function secondsUntil(
  { length, speed, dispersion, mixed }: Column,
  shares: readonly number[],
  { cells, at = 1 }: { readonly cells: number; readonly at?: number },
): number[] {
  const cell = ((1 - mixed) * length) / cells;
  // as long as the gas takes through one cell
  const step = cell / speed;
  const residence = (mixed * length) / speed;
  // what goes through a face: ahead · (cell before it) − back · (cell after it) [m/s]
  const ahead = speed / 2 + dispersion / cell;
  const back = dispersion / cell - speed / 2;
  const share = step / cell / 2;
  const left = new Float64Array(cells).fill(1);
  const change = new Float64Array(cells);
  // (1 − θ A) changes = 2 θ A left + inlet, θ = half a step; A is tridiagonal and constant, so it is factored once
  const outOf = (index: number) => (index === cells - 1 ? speed : ahead) + (index === 0 ? 0 : back);
  const lower = new Float64Array(cells);
  const pivot = new Float64Array(cells);
  for (let index = 0; index < cells; index += 1) {
    const before = index === 0 ? 0 : pivot[index - 1]!;
    lower[index] = index === 0 ? 0 : (-share * ahead) / before;
    pivot[index] = 1 + share * outOf(index) - (index === 0 ? 0 : lower[index]! * -share * back);
  }
  const watched = Math.min(cells - 1, Math.round(at * cells - 0.5));
  const times: number[] = [];
  let last = left[watched]!;
  for (let time = 0; times.length < shares.length; time += step) {
    // air that the mixed share lets into the column during the step, exactly
    const letIn =
      residence === 0
        ? 0
        : (residence * (Math.exp(-time / residence) - Math.exp(-(time + step) / residence)) * speed) / cell;
    for (let index = 0; index < cells; index += 1) {
      const into = (index === 0 ? 0 : ahead * left[index - 1]!) + (index === cells - 1 ? 0 : back * left[index + 1]!);
      change[index] = 2 * share * (into - outOf(index) * left[index]!) + (index === 0 ? letIn : 0);
      if (index > 0) change[index]! -= lower[index]! * change[index - 1]!;
    }
    for (let index = cells - 1; index >= 0; index -= 1) {
      const after = index === cells - 1 ? 0 : -share * back * change[index + 1]!;
      change[index] = (change[index]! - after) / pivot[index]!;
      left[index]! += change[index]!;
    }
    const now = left[watched]!;
    while (times.length < shares.length && now <= shares[times.length]!) {
      // between two steps the logarithm is as good as straight
      const part = Math.log(last / shares[times.length]!) / Math.log(last / now);
      times.push(time + part * step);
    }
    last = now;
  }
  return times;
}
