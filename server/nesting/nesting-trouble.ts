import { barsAsLaid, barsMissing, type BarLaid } from './bars-as-laid.ts';
import type { CutBars } from './cut-bars.ts';
import type { LeftOut } from './priceable-rows.ts';
import type { SizeToCut } from './sizes-to-cut.ts';

/** The most entries of bars that are cut alike, and pieces on one, that a layout holds (server/job/stock.ts). */
const MOST_BARS = 400;
const MOST_PIECES = 400;

const TOO_MUCH = `A layout holds ${String(MOST_BARS)} bars that are cut in different ways and ${String(MOST_PIECES)} pieces on one; these take more. Lay out fewer jobs at once.`;

type Sizes = readonly SizeToCut[];

/**
 * What can be said before anything is sought, in words; empty: nothing. Each piece that has a name of its own has to stand
 * on some entry of the layout, and an entry holds no more of them than have room on a bar.
 */
export function troubleAhead(sizes: Sizes): string {
  const entries = sizes.reduce((sum, size) => sum + entriesAtLeast(size), 0);
  return entries > MOST_BARS ? TOO_MUCH : '';
}

function entriesAtLeast({ wanted, task }: SizeToCut): number {
  const { pieces, bars, kerf, endTrim } = task;
  const room = Math.max(0, ...bars.map(({ length }) => length - endTrim + kerf));
  if (room <= 0) return 0;
  const named = wanted.reduce((sum, alike, index) => sum + alike.length * ((pieces[index]?.length ?? 0) + kerf), 0);
  return Math.ceil(named / room - 1e-9);
}

/** What more bars could be cut from, were their prices in the money of the job; empty: nothing was left out. */
function leftOutHint(leftOut: readonly LeftOut[]): string {
  const bars = leftOut.map(
    ({ name, currency, minorDigits }) =>
      `"${name}" (priced in ${currency} with ${String(minorDigits)} digits after the point)`,
  );
  return bars.length === 0
    ? ''
    : ` Left out, because their prices do not add up with those of this job: ${bars.join(', ')}.`;
}

/**
 * Why an answer cannot be had, in words; empty: it can.
 *
 * @param leftOut rows of the stock that were not cut from
 */
export function nestedTrouble(
  sizes: Sizes,
  found: readonly (CutBars | null)[],
  leftOut: readonly LeftOut[] = [],
): string {
  for (const [index, size] of sizes.entries()) {
    const best = found[index] ?? null;
    const missing = best === null ? null : barsMissing(size, best);
    if (missing === 0) continue;
    const { outsideDiameter, wall, grade } = size.kind;
    const called = `${String(outsideDiameter)} × ${String(wall)} mm ${grade}`;
    const few = missing === null ? '' : ` ${String(missing)} more of the longest would do.`;
    return `There are too few bars of ${called} in stock, and none as long are bought.${few} Put bars into stock, or type the length of the bars that are bought.${leftOutHint(leftOut)}`;
  }
  const bars = sizes.flatMap((size, index): BarLaid[] => {
    const best = found[index] ?? null;
    return best === null ? [] : barsAsLaid(size, best);
  });
  return bars.length <= MOST_BARS && bars.every(({ pieces }) => pieces.length <= MOST_PIECES) ? '' : TOO_MUCH;
}
