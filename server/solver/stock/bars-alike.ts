import type { LaidBar } from '../../job/stock.ts';

/** How many bars some entries are. */
export const barsTogether = (bars: readonly { readonly times: number }[]): number =>
  bars.reduce((sum, { times }) => sum + times, 0);

/** Bars that are alike in everything become one entry, where the first of them stands. */
export function barsAlike(bars: readonly LaidBar[]): LaidBar[] {
  const alike = new Map<string, LaidBar>();
  for (const bar of bars) {
    const { stock, name, remnant, outsideDiameter, wall, grade, length, price, heat, pieces } = bar;
    const on = pieces.map((piece) => [piece.name, piece.length, piece.job]);
    // what is bought costs what the rates say, whatever it did when it was laid out
    const paid = stock === '' ? null : price;
    const key = JSON.stringify([stock, name, remnant, outsideDiameter, wall, grade, length, paid, heat, on]);
    const same = alike.get(key);
    alike.set(key, same === undefined ? bar : { ...same, times: same.times + bar.times });
  }
  return [...alike.values()];
}
