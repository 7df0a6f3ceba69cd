import type { BarPlan, CutPiece, SizeLayout } from '../../plan/stock.ts';
import { figure, input } from '../figure.ts';
import type { ResolvedGrade } from '../tube/grades.ts';
import { massPerMetre } from '../tube/section.ts';
import type { BarKind } from './tube-sizes.ts';

/** Pieces, length and mass of one size and grade for a number of frames, and what becomes of the bars. */
export function sizeFigures(
  kind: BarKind,
  pieces: readonly CutPiece[],
  bars: readonly BarPlan[],
  { quantity, grade }: { readonly quantity: number; readonly grade: Pick<ResolvedGrade, 'density' | 'sources'> },
): Pick<SizeLayout, 'pieces' | 'metres' | 'mass' | 'used' | 'keptShare' | 'scrap'> {
  const count = pieces.reduce((sum, piece) => sum + piece.count, 0);
  const each = pieces.reduce((sum, piece) => sum + piece.count * piece.length.value, 0) / 1000;
  const frames = input('N', 'frames', quantity, 'count');
  const metres = each * quantity;
  const perMetre = massPerMetre({ ...kind, density: grade.density });
  return {
    pieces: figure(
      count * quantity,
      'count',
      'n = N n_1',
      [frames, input('n_1', 'pieces', count, 'count')],
      ['geometry'],
    ),
    metres: figure(metres, 'm', 'L = N L_1', [frames, input('L_1', 'pieces-together', each, 'm')], ['geometry']),
    mass: figure(
      perMetre * metres,
      'kg',
      'M = m L',
      [input('m', 'mass-per-metre', perMetre, 'kg/m'), input('L', 'length', metres, 'm')],
      ['geometry', grade.sources.density],
    ),
    ...sharesOf(bars),
  };
}

/** Of all bars, in percent of their length: pieces, offcuts that are kept, and the rest. */
function sharesOf(bars: readonly BarPlan[]): Pick<SizeLayout, 'used' | 'keptShare' | 'scrap'> {
  const sum = (of: (bar: BarPlan) => number): number => bars.reduce((total, bar) => total + bar.times * of(bar), 0);
  const all = sum(({ length }) => length);
  const used = sum(({ pieces }) => pieces.reduce((total, { from, to }) => total + to - from, 0));
  const kept = sum((bar) => (bar.kept ? bar.offcut.value : 0));
  const share = (value: number, name: string) =>
    figure(
      all > 0 ? (100 * value) / all : 0,
      'percent',
      'x = 100 ℓ / B',
      [input('ℓ', name, value, 'mm'), input('B', 'bars-together', all, 'mm')],
      ['bar-bookkeeping'],
    );
  return {
    used: share(used, 'pieces-together'),
    keptShare: share(kept, 'offcuts-kept'),
    scrap: share(Math.max(0, all - used - kept), 'kerfs-ends-and-short-offcuts'),
  };
}
