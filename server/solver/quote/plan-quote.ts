import type { SettledJob } from '../../job/job.ts';
import type { WayKey } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import type { QuoteOption, QuotePlan } from '../../plan/quote.ts';
import { finding } from '../finding.ts';
import type { JobWork } from '../pricing.ts';
import { breakEvens } from './break-even.ts';
import { gasChoices } from './gas-choices.ts';
import { offeredScopes } from './offered-ways.ts';
import { openFindings } from './open-findings.ts';
import { ownTimes } from './own-times.ts';
import type { Quantities } from './quantities.ts';
import { quoteFindings } from './quote-findings.ts';
import { quoteOption } from './quote-option.ts';
import { validUntil } from './valid-until.ts';

/** A way, or the frame, with what it takes. */
type ScopedWork = { readonly scope: 'frame' | WayKey; readonly quantities: Quantities };

/**
 * The quote of a job: every way that is possible (or the frame) with its lines, sums and quantity breaks, what the gas costs
 * one way or another, where two ways cost alike, and what the work really took. Findings are about the option that is shown.
 *
 * @param asked.works what is priced, the legs of the job among it; `scope` the one that is shown
 * @param asked.shown work of that one, and the legs by themselves: what gas is compared for
 */
export function planQuote(asked: {
  readonly job: SettledJob;
  readonly scope: 'frame' | WayKey;
  readonly works: readonly ScopedWork[];
  readonly shown: JobWork;
  readonly legs: Quantities | null;
}): { readonly quote: QuotePlan; readonly findings: Finding[] } {
  const { job, scope, works } = asked;
  const { rates, quote } = job;
  const priced = works.map((work) => quoteOption(work, job));
  const offered = offeredScopes(priced, { shown: scope, named: quote.offered });
  const options = priced.map((option): QuoteOption => ({ ...option, offered: offered.has(option.scope) }));
  const own = ownTimes(job.log);
  const shown = options.find((option) => option.scope === scope);
  const pieces = works.find((work) => work.scope === scope)?.quantities.pieces ?? [];
  return {
    quote: {
      scope,
      currency: rates.currency,
      minorDigits: rates.minorDigits,
      date: quote.date,
      validUntil: validUntil(quote.date, quote.validDays),
      options,
      gas: gasChoices({ job, work: asked.shown, legs: asked.legs }),
      breakEven: breakEvens({ job, works, legs: asked.legs }),
      own,
    },
    findings:
      shown === undefined
        ? []
        : [...openFindings(shown, pieces), ...exampleFindings(shown), ...quoteFindings(job, own)],
  };
}

const exampleFindings = ({ examples }: QuoteOption): Finding[] =>
  examples === 0 ? [] : [finding('rates-are-examples', 'caution', '/rates', { value: examples })];
