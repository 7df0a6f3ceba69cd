import type { Job } from '../job/job.ts';
import type { Effort } from './correction/outcome.ts';
import type { Priced } from './correction/plan-correction.ts';
import { figure, input } from './figure.ts';
import type { FrameGeometry } from './frame/frame-geometry.ts';
import { purgeGasFigure } from './purge/gas-figures.ts';
import { purgeContext, type PurgeContext } from './purge/purge-context.ts';
import { purgeWork, type PurgeWork } from './purge/purge-work.ts';
import { priceOf } from './quote/price-of.ts';
import { costsOf, minutesOf } from './quote/quote-option.ts';
import { workQuantities } from './quote/work-quantities.ts';
import { weldSites } from './welding/weld-sites.ts';
import { weldWork, type WeldWork } from './welding/weld-work.ts';

/** What a piece of work on a frame takes in welds and gas. */
export type JobWork = {
  readonly effort: Effort;
  readonly welds: readonly WeldWork[];
  readonly gas: PurgeContext;
  readonly purge: PurgeWork;
};

/** The welds of an effort on a frame, the pads that the job has welded on among them, and how they are purged. */
export function jobWork(job: Job, { effort, frame }: { effort: Effort; frame: FrameGeometry }): JobWork {
  const sites = weldSites(effort.joints, frame, job.fixing);
  const welds = weldWork(sites, { welding: job.welding, tube: job.tube, gap: job.closing.gap, members: frame.members });
  const gas = purgeContext(job, frame, welds);
  return { effort, welds, gas, purge: purgeWork(gas) };
}

/** A piece of work as the comparison shows it: gas, minutes and money of one frame, ordered as the first quantity says. */
export function pricedAs(job: Job, work: JobWork): Priced {
  const { gas, purge } = work;
  const quantities = workQuantities(job, work);
  const price = priceOf({ quantities, job, quantity: job.quote.quantities[0] ?? 1 });
  return {
    purgeSetups: figure(purge.setups, 'count', 'n', [input('n', 'set-ups', purge.setups, 'count')], ['geometry']),
    purgeGas: purgeGasFigure(gas.purge, purge),
    minutes: minutesOf(price),
    ...costsOf(price),
  };
}
