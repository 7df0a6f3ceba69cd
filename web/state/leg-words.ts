import type { Site } from '../../server/job/site.ts';
import { hasWords, words, wordsOf } from '../../server/language/words.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { LegPlan } from '../../server/plan/leg.ts';

/** 'port side', or nothing where the name says it already: 'port leg'. */
export function legSide({ name, side }: Pick<LegPlan, 'name' | 'side'>, sides: Site['sides']): string {
  if (side === 'middle') return words('leg.middle');
  const called = words(`side.${sides}.${side}`);
  return name.toLowerCase().includes(called.toLowerCase()) ? '' : words('leg.side', { side: called });
}

/** 'cut first', 'cut second'; a single leg has no order. */
export function legOrder(order: number, of: number): string {
  if (of < 2) return '';
  const key = `leg.order.${String(order)}`;
  return hasWords(key) ? wordsOf('leg.order', String(order)) : words('leg.orderNumber', { number: order });
}

export const sizeOf = (figure: Figure): Figure => ({ ...figure, value: Math.abs(figure.value) });

/** Places in the job's list of legs, in the order in which they are cut; those without a plan last. */
export function cutOrder(count: number, plans: readonly Pick<LegPlan, 'number' | 'order'>[]): readonly number[] {
  const orders = new Map(plans.map(({ number, order }) => [number - 1, order]));
  const orderOf = (index: number): number => orders.get(index) ?? Infinity;
  return Array.from({ length: count }, (_, index) => index).toSorted((a, b) =>
    orderOf(a) === orderOf(b) ? a - b : orderOf(a) - orderOf(b),
  );
}

/** More legs than this and each stands folded; up to it, those from the third on. */
const FEW = 3;
const SHOWN = 2;

/** Whether all but the length of a leg is folded away. */
export const isFolded = (place: number, count: number): boolean => count > FEW || place >= SHOWN;
