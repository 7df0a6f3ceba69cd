import type { Figure } from '../../../plan/figure.ts';
import type { LoadPlan } from '../../../plan/strength.ts';
import { figure, input } from '../../figure.ts';
import type { SourceKey } from '../../sources.ts';
import type { LoadKind } from './beam.ts';

/** down: it stands on the frame. any: it can come from every side, as of a hand on a rail or a body against it. */
type LoadWay = 'down' | 'any';

/** A load that a rule names, or one's own: a point load [N], or one along a rail [N/m]. */
export type ListedLoad = {
  readonly key: LoadPlan['key'];
  readonly kind: LoadKind;
  readonly value: number;
  readonly way: LoadWay;
  readonly source: SourceKey;
};

/**
 * Published loads: 200 lb and 150 lb as 890 and 667 N, 50 lb/ft along a rail as 730 N/m (the rule prints 91 kg and 74 kg/m
 * beside them, which are the same give or take a newton or five), a step of 1.5 kN, a handrail of 0.3 kN. The rail of a
 * vessel carries its two loads one after the other, not together. That of a guardrail is meant out or down; any way is the
 * safe side of it. Rules of other countries and trades differ: which one holds for a frame, local codes say.
 */
const PUBLISHED: readonly ListedLoad[] = [
  { key: 'rail-vessel', kind: 'point', value: 890, way: 'any', source: 'cfr-46-177' },
  { key: 'rail-vessel-along', kind: 'along', value: 730, way: 'any', source: 'cfr-46-177' },
  { key: 'guardrail', kind: 'point', value: 890, way: 'any', source: 'cfr-29-1910' },
  { key: 'midrail', kind: 'point', value: 667, way: 'any', source: 'cfr-29-1910' },
  { key: 'boarding-step', kind: 'point', value: 1500, way: 'down', source: 'en-1502' },
  { key: 'boarding-rail', kind: 'point', value: 300, way: 'any', source: 'en-1502' },
];

/** The loads of the list in its order, one's own [N] last; that one stands on the frame. */
export const listedLoads = (own: number | null): readonly ListedLoad[] =>
  own === null ? PUBLISHED : [...PUBLISHED, { key: 'own', kind: 'point', value: own, way: 'down', source: 'typed' }];

/** The symbol and the input of a load in a working. */
export const loadInput = ({ kind, value }: ListedLoad) =>
  kind === 'point' ? input('P', 'point-load', value, 'N') : input('w', 'load-along', value, 'N/m');

/** A load as the plan shows it. */
export const loadFigure = (load: ListedLoad): Figure => {
  const { symbol, unit } = loadInput(load);
  return figure(load.value, unit, symbol, [loadInput(load)], [load.source]);
};
