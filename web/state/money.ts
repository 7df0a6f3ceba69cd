import type { Job, Units } from '../../server/job/job.ts';
import { amountText, formatMoney, formatQuantity, quantityParts } from '../../server/language/quantity-format.ts';
import type { Unit } from '../../server/plan/figure.ts';

/** How a job writes its numbers and its money. */
type Written = { readonly units: Units; readonly rates: Pick<Job['rates'], 'currency' | 'minorDigits'> };

/** Number and unit of any value; an amount in the job's money. */
export function jobParts(value: number, unit: Unit, { units, rates }: Written): { number: string; unit: string } {
  if (unit !== 'minor') return quantityParts(value, unit, units);
  return { number: amountText(value, rates.minorDigits), unit: rates.currency };
}

/** The same in one piece. */
export const jobQuantity = (value: number, unit: Unit, job: Written): string =>
  unit === 'minor'
    ? formatMoney(value, job.rates.currency, job.rates.minorDigits)
    : formatQuantity(value, unit, job.units);
