import type { QuoteLine } from '../../plan/quote.ts';
import type { PricedLine } from './priced-line.ts';

/** A line with the working of its quantity. */
export function lineOf(line: PricedLine): QuoteLine {
  const { key, of, size, rate, rateUnit, rateField, missing, example, since, amount, parts } = line;
  return {
    key,
    of,
    size,
    quantity: line.figure(),
    rate,
    rateUnit,
    rateField,
    missing: [...missing],
    example,
    since,
    amount,
    parts: [...parts],
  };
}
