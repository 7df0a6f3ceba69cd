import type { SettledJob } from '../../job/job.ts';
import type { WayKey } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import type { QuoteOption, QuotePlan } from '../../plan/quote.ts';
import { finding } from '../finding.ts';
import type { JobWork } from '../pricing.ts';
import { breakEvens } from './break-even.ts';
import { gasChoices } from './gas-choices.ts';
import { legFigures } from './leg-figures.ts';
import { offeredScopes } from './offered-ways.ts';
import { openFindings } from './open-findings.ts';
import { ownTimes } from './own-times.ts';
import { plannedTimes } from './planned-times.ts';
import { priceOf } from './price-of.ts';
import type { PricedLine } from './priced-line.ts';
import type { Quantities } from './quantities.ts';
import { quoteFindings } from './quote-findings.ts';
import { quoteOption } from './quote-option.ts';
import { LAYOUT_FIELD } from './tube-lines.ts';
import { validUntil } from './valid-until.ts';

/** A way, or the frame, with what it takes. */
type ScopedWork = { readonly scope: 'frame' | WayKey; readonly quantities: Quantities };

/**
 * The quote of a job: every way that is possible (or the frame) with its lines, sums and quantity breaks, what the gas costs
 * one way or another, where two ways cost alike, and what the work really took. Findings are about the option that is shown.
 *
 * @param asked.works what is priced, the legs of the job among it; `scope` the one that is shown
 * @param asked.shown work of that one, the legs by themselves, and how it is purged: what gas is compared for
 */
export function planQuote(asked: {
  readonly job: SettledJob;
  readonly scope: 'frame' | WayKey;
  readonly works: readonly ScopedWork[];
  readonly shown: JobWork;
  readonly legs: Quantities | null;
  readonly purge: PurgePlan | null;
}): { readonly quote: QuotePlan; readonly findings: Finding[] } {
  const { job, scope, works } = asked;
  const { rates, quote } = job;
  // bars are laid out for one cut list: that of what is shown
  const priced = works.map((work) => quoteOption(work, job, work.scope === scope ? job.stock.layout : null));
  const offered = offeredScopes(priced, { shown: scope, named: quote.offered });
  const options = priced.map((option): QuoteOption => ({ ...option, offered: offered.has(option.scope) }));
  const own = ownTimes(job.log);
  const shownWork = works.find((work) => work.scope === scope);
  const shown = options.find((option) => option.scope === scope);
  return {
    quote: {
      scope,
      currency: rates.currency,
      minorDigits: rates.minorDigits,
      date: quote.date,
      validUntil: validUntil(quote.date, quote.validDays),
      options,
      gas: gasChoices({ job, work: asked.shown, legs: asked.legs, purge: asked.purge }),
      breakEven: breakEvens({ job, works, legs: asked.legs, options }),
      own,
      planned: shownWork === undefined ? [] : plannedTimes(shownWork.quantities, job),
      legs: legFigures(asked.legs),
    },
    findings:
      shown === undefined
        ? []
        : [
            ...openFindings(shown, openLater(shown, shownWork, job)),
            ...exampleFindings(shown),
            ...oneWayFindings(shown, options),
            ...quoteFindings(job, shown, own),
          ],
  };
}

/** Lines of the option that is shown which stand open for another quantity than the first. */
function openLater(
  { breaks }: QuoteOption,
  work: ScopedWork | undefined,
  job: SettledJob,
): (PricedLine & { readonly frames: number })[] {
  if (work === undefined) return [];
  const { quantities } = work;
  return breaks.slice(1).flatMap(({ quantity, open }) =>
    open === 0
      ? []
      : priceOf({ quantities, job, quantity })
          .lines.filter(({ amount }) => amount === null)
          .map((line) => ({ ...line, frames: quantity })),
  );
}

const exampleFindings = ({ examples }: QuoteOption): Finding[] =>
  examples === 0 ? [] : [finding('rates-are-examples', 'caution', '/rates', { value: examples })];

/** Bars that are kept price one way for one quantity: what else is priced beside it goes by other rules. */
function oneWayFindings({ lines, breaks }: QuoteOption, options: readonly QuoteOption[]): Finding[] {
  const isInUse = lines.some(({ rateField }) => rateField === LAYOUT_FIELD);
  const others = options.length - 1 + Math.max(0, breaks.length - 1);
  return isInUse && others > 0 ? [finding('layout-one-way', 'note', LAYOUT_FIELD, { value: others })] : [];
}
