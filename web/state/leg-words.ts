import type { Units } from '../../server/job/job.ts';
import type { Site } from '../../server/job/site.ts';
import { formatQuantity } from '../../server/language/quantity-format.ts';
import { hasWords, words, wordsOf } from '../../server/language/words.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { Doubt, LegPlan } from '../../server/plan/leg.ts';

/** What a leg is called; one without a name by its number, from 0. */
export const legName = (name: string, index: number): string =>
  name === '' ? words('leg.number', { number: index + 1 }) : name;

/** A leg or a tube of a plan, which knows no numbers. */
export const named = (name: string): string => (name === '' ? words('must.unnamed') : name);

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

/** What a part of a band comes from, as a person would point at it: 'the foot of port leg', 'the point quay corner'. */
export function doubtWords({ from, name, field }: Doubt): string {
  if (name === '') return words(`leg.doubt.${from}`);
  if (field.includes('/foot/at')) return words('leg.doubt.foot', { name });
  if (field.includes('/foot/surface')) return words('leg.doubt.surface', { name });
  if (from === 'point') return words('leg.doubt.pointNamed', { name });
  return from === 'thing' ? words('leg.doubt.thingNamed', { name }) : words(`leg.doubt.${from}`);
}

/** A turn as a size and the way round, seen from the foot; no way where it is shown as nothing. */
export function turnWords(
  figure: Figure,
  units: Units,
): { readonly size: Figure; readonly way: 'clockwise' | 'anticlockwise' | 'none' } {
  const size = { ...figure, value: Math.abs(figure.value) };
  const isNothing = !/[1-9]/.test(formatQuantity(size.value, size.unit, units));
  return { size, way: isNothing ? 'none' : figure.value > 0 ? 'clockwise' : 'anticlockwise' };
}
