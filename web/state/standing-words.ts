import type { Units } from '../../server/job/job.ts';
import type { Placing, Standing } from '../../server/job/standing.ts';
import { formatQuantity } from '../../server/language/quantity-format.ts';
import { words } from '../../server/language/words.ts';
import type { Figure } from '../../server/plan/figure.ts';
import { PAIRS } from './standing-fresh.ts';

/** A slope as a size and whether it rises; level where it is shown as nothing. */
export function risingOf(figure: Figure, units: Units): { readonly size: Figure; readonly way: string } {
  const size = { ...figure, value: Math.abs(figure.value) };
  if (!/[1-9]/.test(formatQuantity(size.value, size.unit, units))) return { size, way: words('standing.isLevel') };
  return { size, way: words(figure.value > 0 ? 'standing.rises' : 'standing.falls') };
}

/** Whether how the frame stands, and with it every leg, goes by what is level now. */
export const isByLevel = ({ slopes, height }: Standing): boolean =>
  height?.to === 'level' || slopes.some(({ to }) => to === 'level');

/** The point that a place of the frame is to lie on, or the place by its number where the plan names none. */
export function misfitName(field: string, name: string, placing: Placing): string {
  if (name !== '' || placing.by !== 'points') return name;
  const index = placing.pairs.findIndex((_, at) => field.startsWith(`${PAIRS}/${String(at)}`));
  return words('standing.pair', { number: index + 1 });
}
