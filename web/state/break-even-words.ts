import type { Job } from '../../server/job/job.ts';
import { saidWords } from '../../server/language/said-words.ts';
import type { BreakEven } from '../../server/plan/quote.ts';

/** Up to where one way is cheaper than another, as a sentence; where one always is, that. */
export const breakEvenWords = ({ by, way, other, at, now, cheaper }: BreakEven, { units, rates }: Job): string =>
  saidWords(
    {
      key: at === null ? `breakEven.${by}.never` : `breakEven.${by}`,
      data: { way, other, cheaper, now: now.value, ...(at === null ? {} : { at: at.value }) },
    },
    units,
    rates,
  );
