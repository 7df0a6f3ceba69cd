import type { Job } from '../job/job.ts';
import type { WayKey } from '../plan/correction.ts';
import type { Finding } from '../plan/finding.ts';
import type { QuotePlan } from '../plan/quote.ts';
import type { Effort } from './correction/outcome.ts';
import type { Priced } from './correction/plan-correction.ts';
import { figure, input } from './figure.ts';
import type { FrameGeometry } from './frame/frame-geometry.ts';
import { numbered, termsOf } from './numbered-symbols.ts';
import { purgeGasFigure } from './purge/gas-figures.ts';
import { purgeContext, type PurgeContext } from './purge/purge-context.ts';
import { purgeWork, type PurgeWork } from './purge/purge-work.ts';
import { planQuote } from './quote/plan-quote.ts';
import { weldSites } from './welding/weld-sites.ts';
import { weldWork, type WeldWork } from './welding/weld-work.ts';

/** What a piece of work on a frame takes in welds and gas. */
export type JobWork = {
  readonly effort: Effort;
  readonly welds: readonly WeldWork[];
  readonly gas: PurgeContext;
  readonly purge: PurgeWork;
};

/** Price of a piece of work. */
export type Bill = { readonly quote: QuotePlan; readonly minutes: number | null; readonly findings: Finding[] };

/** The welds of an effort on a frame, the pads that the job has welded on among them, and how they are purged. */
export function jobWork(job: Job, { effort, frame }: { effort: Effort; frame: FrameGeometry }): JobWork {
  const sites = weldSites(effort.joints, frame, job.fixing);
  const welds = weldWork(sites, { welding: job.welding, tube: job.tube, gap: job.closing.gap, members: frame.members });
  const gas = purgeContext(job, frame, welds);
  return { effort, welds, gas, purge: purgeWork(gas) };
}

/** What an effort takes in gas, filler, time and money. */
export function billFor(job: Job, { effort, welds, purge }: JobWork, scope: 'frame' | WayKey): Bill {
  const sum = (pick: (weld: WeldWork) => number): number => welds.reduce((total, weld) => total + pick(weld), 0);
  return planQuote({
    rates: job.rates,
    scope,
    quantities: {
      tubeMetres: effort.tubeMetres,
      gasCubicMetres: purge.jobGas / 1000,
      fillerKilograms: sum(({ fillerMass }) => fillerMass) / 1000,
      counts: {
        bend: effort.bends,
        cut: effort.cuts,
        fit: welds.length,
        purge: purge.setups,
        weld: welds.length,
        finish: welds.length,
      },
      arcMinutes: sum(({ arcTime }) => arcTime) / 60,
      purgeMinutes: purge.wait / 60,
    },
  });
}

/** A piece of work as the comparison shows it. */
export function pricedAs({ gas, purge }: Pick<JobWork, 'gas' | 'purge'>, { quote, minutes }: Bill): Priced {
  const lines = quote.lines.filter(({ amount }) => amount !== null).length;
  const sum = figure(quote.subtotal, 'minor', 'Σ lines', [input('n', 'quote-lines', lines, 'count')], ['typed']);
  const hours = quote.lines.flatMap(({ key, quantity }) => (quantity?.unit === 'h' ? [{ key, quantity }] : []));
  return {
    purgeSetups: figure(purge.setups, 'count', 'n', [input('n', 'set-ups', purge.setups, 'count')], ['geometry']),
    purgeGas: purgeGasFigure(gas.purge, purge),
    minutes:
      minutes === null
        ? null
        : figure(
            minutes,
            'min',
            `t = 60 (${termsOf('h', hours.length, ' + ')})`,
            hours.map(({ key, quantity }, index) =>
              input(numbered('h', index + 1), `time-of-${key}`, quantity.value, 'h'),
            ),
            ['typed'],
          ),
    cost: quote.open.length > 0 ? null : sum,
    costAtLeast: sum,
  };
}
