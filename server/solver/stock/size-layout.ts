import type { SawSettings, TubeRate } from '../../job/rates.ts';
import type { StockLayout } from '../../job/stock.ts';
import type { Figure } from '../../plan/figure.ts';
import type { BarPlan, CutPiece, SizeLayout } from '../../plan/stock.ts';
import { figure, input } from '../figure.ts';
import { wholeMinor } from '../quote/minor-units.ts';
import { creditOf, worthOf } from './bar-credit.ts';
import { barPlan, type BarAsLaid } from './bar-plan.ts';
import { barsTogether } from './bars-alike.ts';
import { fewestBars } from './fewest-bars.ts';
import { begun, firstFit, type CutAlike, type Lengths } from './first-fit.ts';
import type { KeptPrice } from './kept-price.ts';

/** How the pieces of one size and grade lie on bars, and what that says. */
export type LaidSize = Pick<SizeLayout, 'from' | 'proven' | 'bars' | 'least' | 'cost'>;

/** What nobody can lay out: no bar is known, or a piece is longer than one. */
const NOT_LAID: LaidSize = { from: 'none', proven: false, bars: [], least: null, cost: null };

/** The bars of the layout that the job keeps, with this job's share of what they cost. */
export function keptLaid(
  { amount, bars, today }: KeptPrice,
  { found, saw }: { readonly found: StockLayout['found']; readonly saw: SawSettings },
): LaidSize {
  const count = input('n', 'bars', bars, 'count');
  return {
    from: 'kept',
    proven: found === 'proven',
    bars: numbered(today, saw),
    least: null,
    cost: amount === null ? null : figure(amount, 'minor', 'c = Σ shares', [count], ['bar-bookkeeping', 'money']),
  };
}

/** Bars one after the other, those cut alike as one with the number of the first. */
function numbered(bars: readonly BarAsLaid[], saw: SawSettings): BarPlan[] {
  let next = 1;
  return bars.map((bar) => {
    const plan = barPlan(next, bar, saw);
    next += bar.times;
    return plan;
  });
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
  const bars = numbered(barsOf(laid, pieces, rate), saw);
  return {
    from: 'first-fit',
    proven: barsTogether(bars) === least,
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
    cost: costOf(laid, rate, credit),
  };
}

const countOf = (lengths: readonly Lengths[]): number => lengths.reduce((sum, { count }) => sum + count, 0);

/** Bars as they are bought, each with its pieces by name, the longest first. */
function barsOf(laid: readonly CutAlike[], pieces: readonly CutPiece[], rate: TubeRate): BarAsLaid[] {
  const price = rate.by === 'bar' ? rate.perBar.value : null;
  const bought = { stock: '', name: '', remnant: false, length: rate.barLength, price, heat: '' };
  return laid.map(({ bars: times, on }) => ({
    ...bought,
    times,
    pieces: on.flatMap(({ index, count }) => {
      const piece = pieces[index];
      if (piece === undefined) return [];
      return Array.from({ length: count }, () => ({ name: piece.name, length: piece.length.value, job: '' }));
    }),
  }));
}

/** What bars by the bar cost, their kept offcuts credited, as a quote has it; null by the metre and while a price is open. */
function costOf(laid: readonly CutAlike[], { perBar, by, barLength }: TubeRate, credit: number | null): Figure | null {
  if (by === 'metre' || perBar.value === null) return null;
  const { count, keptLength } = begun(laid);
  const bought = wholeMinor(count * perBar.value);
  const back = keptLength > 0 ? creditOf(worthOf({ price: perBar.value, length: barLength }, keptLength), credit) : 0;
  if (bought === null || back === null) return null;
  return figure(
    bought - back,
    'minor',
    'c = n p − p q O / (100 B)',
    [
      input('n', 'bars', count, 'count'),
      input('p', 'price-of-a-bar', perBar.value, 'minor'),
      input('q', 'credit', credit ?? 0, 'percent'),
      input('O', 'offcuts-kept', keptLength, 'mm'),
      input('B', 'bar', barLength, 'mm'),
    ],
    ['bar-bookkeeping', 'money'],
  );
}
