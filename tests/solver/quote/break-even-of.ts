import type { SettledJob } from '../../../server/job/job.ts';
import type { BreakEven } from '../../../server/plan/quote.ts';
import { breakEvens } from '../../../server/solver/quote/break-even.ts';
import { byOperation } from '../../../server/solver/quote/operations.ts';
import { priceOf } from '../../../server/solver/quote/price-of.ts';
import type { Quantities } from '../../../server/solver/quote/quantities.ts';

export const NONE = byOperation(() => 0);
export const EMPTY: Quantities = {
  pieces: [],
  counts: NONE,
  metres: NONE,
  process: NONE,
  purgeGas: 0,
  torchGas: 0,
  filler: 0,
  welds: 0,
  parts: {},
};

type Works = Parameters<typeof breakEvens>[0]['works'];

/** With the prices that the quote of the job has. */
export const evens = (job: SettledJob, works: Works, legs: Quantities | null = null): BreakEven[] =>
  breakEvens({
    job,
    works,
    legs,
    options: works.map(({ scope, quantities }) => ({
      scope,
      cost: priceOf({ quantities, job, quantity: job.quote.quantities[0]! }).cost,
    })),
  });
