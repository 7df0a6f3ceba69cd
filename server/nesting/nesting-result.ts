import type { SawSettings } from '../job/rates.ts';
import type { LaidBar, StockLayout } from '../job/stock.ts';
import { barShares } from '../solver/stock/bar-shares.ts';
import { barsAsLaid, barsMissing, type BarLaid } from './bars-as-laid.ts';
import type { CutBars } from './cut-bars.ts';
import type { Nesting, NestingResult } from './nesting.ts';
import type { NestedJob, SizeToCut } from './sizes-to-cut.ts';

/** The most bars, and pieces on one, that a layout holds (server/job/stock.ts). */
const MOST_BARS = 400;
const MOST_PIECES = 400;

/** What an answer is made of beside the cuts. */
export type Nested = {
  readonly sizes: readonly SizeToCut[];
  readonly jobs: readonly NestedJob[];
  readonly saw: SawSettings;
  readonly currency: string;
  /** What an offcut that is kept is worth [percent]; null: not known. */
  readonly credit: number | null;
  /** The day that it was found. */
  readonly date: string;
};

const barsOf = ({ cuts }: CutBars): number => cuts.reduce((sum, { times }) => sum + times, 0);

const isProven = ({ cost, costBound, length, lengthBound }: CutBars): boolean =>
  costBound >= cost && lengthBound >= length;

/** How much a value may be over the least [percent of what it cannot come below]. */
const over = (value: number, bound: number): number =>
  value <= bound ? 0 : bound > 0 ? (100 * (value - bound)) / bound : 100;

/** All sizes together; no money where a price is not known. */
export function nestedSum({ sizes }: Nested, found: readonly CutBars[]): NonNullable<Nesting['best']> {
  const isPriced = sizes.every((size) => size.isPriced);
  const sum = (of: (best: CutBars) => number): number => found.reduce((total, best) => total + of(best), 0);
  return {
    bars: sum(barsOf),
    cost: isPriced ? sum(({ cost }) => cost) : null,
    bound: isPriced ? sum(({ costBound }) => costBound) : null,
  };
}

/** Why an answer cannot be had, in words; empty: it can. */
export function nestedTrouble({ sizes }: Nested, found: readonly (CutBars | null)[]): string {
  for (const [index, size] of sizes.entries()) {
    const best = found[index] ?? null;
    const missing = best === null ? null : barsMissing(size, best);
    if (missing === 0) continue;
    const { outsideDiameter, wall, grade } = size.kind;
    const called = `${String(outsideDiameter)} × ${String(wall)} mm ${grade}`;
    const few = missing === null ? '' : ` ${String(missing)} more of the longest would do.`;
    return `There are too few bars of ${called} in stock, and none as long are bought.${few} Put bars into stock, or type the length of the bars that are bought.`;
  }
  const answers = found.filter((best) => best !== null);
  const bars = answers.reduce((sum, best) => sum + barsOf(best), 0);
  const crowded = answers.some(({ cuts }) =>
    cuts.some(({ counts }) => counts.reduce((sum, count) => sum + count, 0) > MOST_PIECES),
  );
  if (bars <= MOST_BARS && !crowded) return '';
  return `A layout holds ${String(MOST_BARS)} bars and ${String(MOST_PIECES)} pieces on one; these take more. Lay out fewer frames at once.`;
}

/** What was found, as the job can keep it. */
export function nestingResult(nested: Nested, found: readonly CutBars[]): NestingResult {
  const { sizes, jobs, saw, currency, date } = nested;
  const laid = sizes.flatMap((size, index) => {
    const best = found[index];
    return best === undefined ? [] : [{ size, best, bars: barsAsLaid(size, best) }];
  });
  const own = laid.filter(({ bars }) => bars.some(isOwn));
  const layout: StockLayout = {
    found: own.every(({ best }) => isProven(best)) ? 'proven' : 'best-so-far',
    date,
    saw,
    currency,
    bars: own.flatMap(({ bars }) => bars.filter(isOwn).map(asKept)),
    taken: null,
  };
  return {
    layout,
    sizes: laid.map(({ size, best, bars }) => ({
      ...size.kind,
      bars: bars.length,
      toBuy: bars.filter(({ stock }) => stock === '').length,
      cost: size.isPriced ? best.cost : null,
      bound: size.isPriced ? best.costBound : null,
      proven: isProven(best),
      gap: over(best.cost, best.costBound) || over(best.length, best.lengthBound),
    })),
    overlong: sizes.flatMap(({ overlong, longest }) =>
      overlong.map(({ title, name, length }) => ({ job: title, name, length, longest })),
    ),
    shares: sharesOf(
      jobs,
      laid.flatMap(({ bars }) => bars),
      nested,
    ),
  };
}

/** Whether something of this job is cut from a bar. */
const isOwn = ({ pieces }: BarLaid): boolean => pieces.some(({ id }) => id === '');

const asKept = ({ pieces, ...bar }: BarLaid): LaidBar => ({
  ...bar,
  pieces: pieces.map(({ title, name, length }) => ({ name, length, job: title })),
});

/** What each job pays, bar by bar by the rule that its own plan goes by; null where a price is not known. */
function sharesOf(
  jobs: readonly NestedJob[],
  bars: readonly BarLaid[],
  { saw, credit }: Nested,
): NestingResult['shares'] {
  const shares = bars.map((bar) => {
    // two jobs may bear one title, so that they are told apart by their ids here
    const pieces = bar.pieces.map(({ id, name, length }) => ({ name, length, job: id }));
    return { of: barShares({ ...bar, pieces }, saw, credit), ids: new Set(pieces.map(({ job }) => job)) };
  });
  return jobs.map(({ id, title }) => {
    const own = shares.filter(({ ids }) => ids.has(id));
    const cost = own.every(({ of }) => of !== null) ? own.reduce((sum, { of }) => sum + (of?.get(id) ?? 0), 0) : null;
    return { job: title, id, cost };
  });
}
