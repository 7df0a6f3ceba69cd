import type { Units } from '../job/job.ts';
import type { QuotePlan } from '../plan/quote.ts';
import { formatFigure } from './quantity-format.ts';
import { words } from './words.ts';

/** The note below ways that are compared: which of their columns have the legs of the job in them; empty without legs. */
export function legsWords(legs: QuotePlan['legs'], units: Units): string {
  if (legs === null) return '';
  const welds = legs.welds.value;
  if (welds === 0) return words('price.withLegsUnwelded');
  return words('price.withLegs', {
    welds: welds === 1 ? words('price.oneWeld') : words('price.welds', { count: welds }),
    gas: formatFigure(legs.purgeGas, units),
  });
}
