import type { Rates } from '../job/rates.ts';
import type { StockRow } from '../job/stock-row.ts';
import { isSameKind } from '../solver/stock/tube-sizes.ts';
import type { NestingResult } from './nesting.ts';
import type { NestedJob } from './sizes-to-cut.ts';

/** What prices count in. */
export type Currency = Pick<Rates, 'currency' | 'minorDigits'>;

export const isSameCurrency = (one: Currency, other: Currency): boolean =>
  one.currency === other.currency && one.minorDigits === other.minorDigits;

/** A row of the stock that could be cut and is not, because its price never adds up with the others. */
export type LeftOut = NestingResult['leftOut'][number];

/**
 * Rows of the stock that some piece of the jobs can be cut from, by size and grade, and those of them that are left out:
 * they have a price in another currency than the job, or in other digits of it. A row without a price has none to mix.
 */
export function priceableRows(
  stock: readonly StockRow[],
  jobs: readonly Pick<NestedJob, 'pieces'>[],
  own: Currency,
): { readonly rows: readonly StockRow[]; readonly leftOut: readonly LeftOut[] } {
  const usable = stock.filter(
    ({ document }) =>
      document.count > 0 && jobs.some(({ pieces }) => pieces.some((piece) => isSameKind(piece, document))),
  );
  const isPriceable = ({ document }: StockRow): boolean => document.price === null || isSameCurrency(document, own);
  return {
    rows: usable.filter(isPriceable),
    leftOut: usable
      .filter((row) => !isPriceable(row))
      .map(({ id, document: { name, currency, minorDigits } }) => ({ id, name, currency, minorDigits })),
  };
}
