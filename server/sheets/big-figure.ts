import type { Units } from '../job/job.ts';
import { formatQuantity, quantityParts } from '../language/quantity-format.ts';
import type { Figure } from '../plan/figure.ts';

/** Figures that a person can set or read off a gauge. */
const READ = 3;

/** What is read off or set on a gauge, a meter or a watch. */
const READ_OFF: ReadonlySet<Figure['unit']> = new Set(['L', 'L/min', 'bar', 'percent', 'min', 'A'] as const);

/** A number to be read from across the bench: gas, pressure and shares to three figures, the rest as everywhere. */
export function bigFigure({ value, unit }: Pick<Figure, 'value' | 'unit'>, units: Units): string {
  if (!READ_OFF.has(unit)) return formatQuantity(value, unit, units);
  const rounded = Number(value.toPrecision(READ));
  return `${String(rounded)} ${quantityParts(value, unit, units).unit}`;
}
