import type { SawSettings } from '../job/rates.ts';
import type { LaidBar, StockLayout } from '../job/stock.ts';
import { barShares } from '../solver/stock/bar-shares.ts';
import { barsAsLaid, type BarLaid } from './bars-as-laid.ts';
import type { CutBars } from './cut-bars.ts';
import type { Nesting, NestingResult } from './nesting.ts';
import type { LeftOut } from './priceable-rows.ts';
import type { NestedJob, SizeToCut } from './sizes-to-cut.ts';

/** What an answer is made of beside the cuts. */
export type Nested = {
  readonly sizes: readonly SizeToCut[];
  readonly jobs: readonly NestedJob[];
  readonly saw: SawSettings;
  readonly currency: string;
  /** Digits of its minor unit. */
  readonly minorDigits: number;
  /** What an offcut that is kept is worth [percent]; null: not known. */
  readonly credit: number | null;
  /** The day that it was found. */
  readonly date: string;
  /** Rows of the stock whose prices never add up with the others. */
  readonly leftOut: readonly LeftOut[];
};

export const barsIn = ({ cuts }: CutBars): number => cuts.reduce((sum, { times }) => sum + times, 0);

const isProven = ({ cost, costBound, length, lengthBound }: CutBars): boolean =>
  costBound >= cost && lengthBound >= length;

/** How much a value may be over the least [percent of what it cannot come below]; null: over nothing at all. */
const over = (value: number, bound: number): number | null =>
  value <= bound ? 0 : bound > 0 ? (100 * (value - bound)) / bound : null;

function gapOf({ cost, costBound, length, lengthBound }: CutBars): number | null {
  const gap = over(cost, costBound);
  return gap === 0 ? over(length, lengthBound) : gap;
}

/** All sizes together; no money where a price is not known. */
export function nestedSum({ sizes }: Nested, found: readonly CutBars[]): NonNullable<Nesting['best']> {
  const isPriced = sizes.every((size) => size.isPriced);
  const sum = (of: (best: CutBars) => number): number => found.reduce((total, best) => total + of(best), 0);
  return {
    bars: sum(barsIn),
    cost: isPriced ? sum(({ cost }) => cost) : null,
    bound: isPriced ? sum(({ costBound }) => costBound) : null,
  };
}

/** The bars of one size with what is cut from them. */
type Laid = { readonly size: SizeToCut; readonly best: CutBars; readonly bars: readonly BarLaid[] };

/** What was found, as the jobs can keep it and as all of it is cut. */
export function nestingResult(nested: Nested, found: readonly CutBars[]): NestingResult {
  const { sizes, jobs } = nested;
  const laid = sizes.flatMap((size, index): Laid[] => {
    const best = found[index];
    return best === undefined ? [] : [{ size, best, bars: barsAsLaid(size, best) }];
  });
  const viewOf = (id: string) => ({ of: id, isOn: ({ pieces }: BarLaid) => pieces.some((piece) => piece.id === id) });
  const layouts = jobs.map(({ id, title }) => ({
    id: id === '' ? null : id,
    title,
    layout: layoutOf(nested, laid, viewOf(id)),
  }));
  const alone = jobs.length === 1 ? '' : null;
  const whole = layoutOf(nested, laid, { of: alone, isOn: () => true });
  return {
    layout: layouts[0]?.layout ?? whole,
    layouts,
    whole,
    sizes: laid.map(({ size, best, bars }) => ({
      ...size.kind,
      bars: count(bars),
      toBuy: count(bars.filter(({ stock }) => stock === '')),
      cost: size.isPriced ? best.cost : null,
      bound: size.isPriced ? best.costBound : null,
      proven: isProven(best),
      gap: gapOf(best),
    })),
    overlong: sizes.flatMap(({ overlong, longest }) =>
      overlong.map(({ id, name, length }) => ({ job: id === '' ? '' : nameOf(nested, id), name, length, longest })),
    ),
    shares: jobs.map(({ id, title }) => ({
      job: title,
      id,
      cost: shareOf(layoutOf(nested, laid, { ...viewOf(id), isReckoned: true }), nested),
    })),
    leftOut: [...nested.leftOut],
  };
}

const count = (bars: readonly BarLaid[]): number => bars.reduce((sum, { times }) => sum + times, 0);

const nameOf = ({ jobs }: Nested, id: string): string => jobs.find((job) => job.id === id)?.title ?? id;

/**
 * Bars as they are kept.
 *
 * @param view the job whose pieces are its own and bear no name (null: every piece bears the name of its job), and whether
 *   bars without a price of their own bear the one that they are reckoned at
 */
function layoutOf(
  nested: Nested,
  laid: readonly Laid[],
  view: { readonly of: string | null; readonly isOn: (bar: BarLaid) => boolean; readonly isReckoned?: boolean },
): StockLayout {
  const { saw, currency, minorDigits, date } = nested;
  const own = laid
    .map(({ best, bars }) => ({ best, bars: bars.filter(view.isOn) }))
    .filter(({ bars }) => bars.length > 0);
  const names = new Map(nested.jobs.map(({ id, title }) => [id, id === view.of ? '' : title]));
  const kept = ({ pieces, isReckoned, price, ...bar }: BarLaid): LaidBar => ({
    ...bar,
    price: isReckoned && view.isReckoned !== true ? null : price,
    pieces: pieces.map(({ id, name, length }) => ({ name, length, job: names.get(id) ?? id })),
  });
  return {
    found: own.every(({ best }) => isProven(best)) ? 'proven' : 'best-so-far',
    date,
    saw,
    currency,
    minorDigits,
    bars: own.flatMap(({ bars }) => bars.map(kept)),
    taken: null,
  };
}

/** What a job pays of its bars, by the rule that its own plan goes by; null where a price is not known. */
function shareOf({ bars }: StockLayout, { saw, credit }: Nested): number | null {
  let sum = 0;
  for (const bar of bars) {
    const shares = barShares(bar, saw, credit);
    if (shares === null) return null;
    sum += (shares.get('') ?? 0) * bar.times;
  }
  return sum;
}
