import type { Figure } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import { SHRINKAGE_DOUBT } from '../correction/weld-limits.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import { gapShrinkage, MOST, SADDLE_SHRINKAGE, type ReckonedShrinkage } from './shrinkage.ts';

/** What one butt pulls in, as reckoned from its heat and its gap. */
export function reckonedFigure({ value, plusMinus, heat, wall, gap, expansion }: ReckonedShrinkage): Figure {
  const sum = '10⁹ α H/(ρc t) + k b';
  const capped = value >= MOST;
  return figure(
    value,
    'mm',
    capped ? `s = min(s₀, ${sum})` : `s = ${sum}`,
    [
      ...(capped ? [input('s₀', 'most-shrinkage', MOST, 'mm')] : []),
      input('α', 'expansion-for-each-degree', expansion.growth, '1/K'),
      input('ρc', 'heat-capacity', expansion.heatCapacity, 'J/m3K'),
      input('H', 'heat-input', heat, 'J/mm'),
      input('t', 'wall', wall, 'mm'),
      input('k', 'share-of-gap-that-closes', gapShrinkage(1), 'ratio'),
      input('b', 'gap', gap, 'mm'),
    ],
    ['full-depth-heat', 'aws-shrinkage', 'blodgett-shrinkage'],
    band(plusMinus, 'published-forms-of-shrinkage'),
  );
}

/** What one butt pulls in as the cuts use it: typed, or reckoned. */
export const settledFigure = (typed: number | null, reckoned: Figure): Figure =>
  typed === null ? reckoned : figure(typed, 'mm', 's', [input('s', 'shrinkage', typed, 'mm')], ['typed']);

/** How far a saddle pulls its branch in. */
export const saddleFigure = (): Figure =>
  figure(
    SADDLE_SHRINKAGE.value,
    'mm',
    's',
    [input('s', 'shrinkage-of-fillet', SADDLE_SHRINKAGE.value, 'mm')],
    ['twi-fillet'],
    band(SADDLE_SHRINKAGE.plusMinus, 'published-forms-of-shrinkage'),
  );

/** A plate follows its tube: nothing of the frame moves. */
export const padFigure = (): Figure => figure(0, 'mm', 's = 0', [], ['geometry']);

/** A typed shrinkage that is farther from what heat and gap make of it than that is in doubt. */
export function shrinkageFindings(typed: number | null, { value }: ReckonedShrinkage): Finding[] {
  if (typed === null || Math.abs(typed - value) <= SHRINKAGE_DOUBT * value) return [];
  const field = '/closing/shrinkage';
  const data = { value: typed, low: (1 - SHRINKAGE_DOUBT) * value, high: (1 + SHRINKAGE_DOUBT) * value };
  return [finding('shrinkage-differs', 'note', field, data, { field, value: null })];
}
