import type { Figure } from '../../../plan/figure.ts';
import type { LoadPlan } from '../../../plan/strength.ts';
import { figure, input } from '../../figure.ts';
import type { SourceKey } from '../../sources.ts';

/** down: it stands on the frame. any: it can come from every side, as of a hand on a rail or a body against it. */
type LoadWay = 'down' | 'any';

/** A point load [N] that a rule names, or one's own. */
export type PointLoad = {
  readonly key: LoadPlan['key'];
  readonly value: number;
  readonly way: LoadWay;
  readonly source: SourceKey;
};

/**
 * Published loads as they are printed: 200 lb and 150 lb as 890 and 667 N, a step of 1.5 kN, a handrail of 0.3 kN. That of
 * a guardrail is meant out or down; any way is the safe side of it. Rules of other countries and trades differ: which one
 * holds for a frame, local codes say.
 */
const PUBLISHED: readonly PointLoad[] = [
  { key: 'rail-vessel', value: 890, way: 'any', source: 'cfr-46-177' },
  { key: 'guardrail', value: 890, way: 'any', source: 'cfr-29-1910' },
  { key: 'midrail', value: 667, way: 'any', source: 'cfr-29-1910' },
  { key: 'boarding-step', value: 1500, way: 'down', source: 'en-1502' },
  { key: 'boarding-rail', value: 300, way: 'any', source: 'en-1502' },
];

/** The loads of the list in its order, one's own [N] last; that one stands on the frame. */
export const pointLoads = (own: number | null): readonly PointLoad[] =>
  own === null ? PUBLISHED : [...PUBLISHED, { key: 'own', value: own, way: 'down', source: 'typed' }];

/** A load as the plan shows it. */
export const loadFigure = ({ value, source }: PointLoad): Figure =>
  figure(value, 'N', 'P', [input('P', 'point-load', value, 'N')], [source]);
