import type { SawSettings, TubeRate } from '../../job/rates.ts';
import type { StockLayout } from '../../job/stock.ts';
import type { Figure } from '../../plan/figure.ts';
import type { BarPlan, CutPiece, SizeLayout } from '../../plan/stock.ts';
import { figure, input } from '../figure.ts';
import { barPlan } from './bar-plan.ts';
import { fewestBars } from './fewest-bars.ts';
import { firstFit, type CutAlike, type Lengths } from './first-fit.ts';
import type { KeptSize } from './kept-layout.ts';

/** How the pieces of one size and grade lie on bars, and what that says. */
export type LaidSize = Pick<SizeLayout, 'from' | 'proven' | 'bars' | 'least' | 'cost'>;

/** What nobody can lay out: no bar is known, or a piece is longer than one. */
const NOT_LAID: LaidSize = { from: 'none', proven: false, bars: [], least: null, cost: null };

/** The bars of the layout that the job keeps, with this job's share of what they cost [minor]; null while a price is open. */
export function keptLaid(kept: KeptSize, { found, saw }: StockLayout, share: number | null): LaidSize {
  const count = kept.bars.length;
  return {
    from: 'kept',
    proven: found === 'proven',
    bars: kept.bars.map((bar, index) => barPlan(index + 1, bar, saw)),
    least: null,
    cost:
      share === null
        ? null
        : figure(share, 'minor', 'c = Σ shares', [input('n', 'bars', count, 'count')], ['bar-bookkeeping', 'money']),
  };
}

/**
 * Pieces laid by first fit into bars as they are bought.
 *
 * @param pieces of one frame, for so many frames
 * @param credit what an offcut that is kept is worth [percent of its share of the bar]; null: nobody knows
 */
export function laidByFirstFit(asked: {
  readonly pieces: readonly CutPiece[];
  readonly quantity: number;
  readonly rate: TubeRate | null;
  readonly saw: SawSettings;
  readonly credit: number | null;
}): LaidSize {
  const { pieces, quantity, rate, saw, credit } = asked;
  if (rate === null) return NOT_LAID;
  const lengths = pieces.map(({ length, count }): Lengths => ({ length: length.value, count: count * quantity }));
  const laid = firstFit(lengths, rate.barLength, saw);
  if (laid === null) return NOT_LAID;
  const least = fewestBars(lengths, rate.barLength, saw);
  const bars = barsOf(laid, pieces, rate, saw);
  return {
    from: 'first-fit',
    proven: bars.length === least,
    bars,
    least: figure(
      least,
      'count',
      'L_2',
      [
        input('B', 'bar', rate.barLength, 'mm'),
        input('t', 'end-cut-off', saw.endTrim, 'mm'),
        input('k', 'kerf', saw.kerf, 'mm'),
        input('n', 'pieces', countOf(lengths), 'count'),
      ],
      ['fewest-bars'],
    ),
    cost: costOf(bars, rate, credit),
  };
}

const countOf = (lengths: readonly Lengths[]): number => lengths.reduce((sum, { count }) => sum + count, 0);

/** Bars cut alike one after the other, each with its pieces by name, the longest first. */
function barsOf(laid: readonly CutAlike[], pieces: readonly CutPiece[], rate: TubeRate, saw: SawSettings): BarPlan[] {
  const price = rate.by === 'bar' ? rate.perBar.value : null;
  const bought = { stock: '', name: '', remnant: false, length: rate.barLength, price, heat: '' };
  const bars: BarPlan[] = [];
  for (const alike of laid) {
    const on = alike.on.flatMap(({ index, count }) => {
      const piece = pieces[index];
      if (piece === undefined) return [];
      return Array.from({ length: count }, () => ({ name: piece.name, length: piece.length.value, job: '' }));
    });
    const first = barPlan(bars.length + 1, { ...bought, pieces: on }, saw);
    for (let more = 0; more < alike.bars; more += 1) bars.push({ ...first, number: bars.length + 1 });
  }
  return bars;
}

/** What bars by the bar cost, their kept offcuts credited; null by the metre and while a price is open. */
function costOf(bars: readonly BarPlan[], { perBar, by, barLength }: TubeRate, credit: number | null): Figure | null {
  const keptLength = bars.reduce((sum, { kept, offcut }) => sum + (kept ? offcut.value : 0), 0);
  if (by === 'metre' || perBar.value === null || (keptLength > 0 && credit === null)) return null;
  const back = Math.round((perBar.value * (credit ?? 0) * keptLength) / (100 * barLength));
  return figure(
    bars.length * perBar.value - back,
    'minor',
    'c = n p − p q O / (100 B)',
    [
      input('n', 'bars', bars.length, 'count'),
      input('p', 'price-of-a-bar', perBar.value, 'minor'),
      input('q', 'credit', credit ?? 0, 'percent'),
      input('O', 'offcuts-kept', keptLength, 'mm'),
      input('B', 'bar', barLength, 'mm'),
    ],
    ['bar-bookkeeping', 'money'],
  );
}
