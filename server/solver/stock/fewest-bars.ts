import type { SawSettings } from '../../job/rates.ts';
import { longestOf, ROUNDING } from './bar-use.ts';
import type { Lengths } from './first-fit.ts';

/**
 * Fewest bars of one length that could ever do: the lower bound L2 of Martello and Toth, with every piece and the bar made
 * longer by one kerf. Pieces longer than half a bar have one each; for every shorter length in turn, what is shorter still
 * is left out, bars on which even that has no room take nothing more, and the rest is filled up as if it were loose. Where
 * that length is the shortest of all, and nothing is longer than half a bar, it is what the sum of all lengths needs.
 *
 * It never falls where the kerf grows: a loose filling with the wider kerf is one with the narrower kerf too.
 *
 * @param bar length of a bar [mm]; every piece must fit on one
 * @returns a number of bars; 0 where there is nothing to cut
 */
export function fewestBars(lengths: readonly Lengths[], bar: number, saw: SawSettings): number {
  const room = longestOf(bar, saw) + saw.kerf + ROUNDING;
  const items = lengths
    .filter(({ count }) => count > 0)
    .map(({ length, count }) => ({ takes: length + saw.kerf, count }))
    .sort((a, b) => b.takes - a.takes);
  const large = items.filter(({ takes }) => takes > room / 2);
  const small = items.filter(({ takes }) => takes <= room / 2);
  let least = countOf(large);
  for (const { takes: shortest } of small) {
    const open = large.filter(({ takes }) => takes <= room - shortest);
    const loose = sumOf(small.filter(({ takes }) => takes >= shortest));
    const spare = countOf(open) * room - sumOf(open);
    least = Math.max(least, countOf(large) + Math.max(0, ceiling((loose - spare) / room)));
  }
  return least;
}

type Item = { readonly takes: number; readonly count: number };

const countOf = (items: readonly Item[]): number => items.reduce((sum, { count }) => sum + count, 0);
const sumOf = (items: readonly Item[]): number => items.reduce((sum, { takes, count }) => sum + takes * count, 0);

/** Rounded up, but not for what adding up alone has put on top. */
const ceiling = (value: number): number => Math.ceil(value - 1e-9);
