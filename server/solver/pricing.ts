import type { Job, SettledJob } from '../job/job.ts';
import type { WayKey } from '../plan/correction.ts';
import type { LegPlan } from '../plan/leg.ts';
import type { PurgePlan } from '../plan/purge.ts';
import type { Effort } from './correction/outcome.ts';
import type { Priced, Work } from './correction/plan-correction.ts';
import { figure, input } from './figure.ts';
import type { FrameGeometry } from './frame/frame-geometry.ts';
import { purgeGasFigure } from './purge/gas-figures.ts';
import { purgeContext, type PurgeContext } from './purge/purge-context.ts';
import { purgeWork, type PurgeWork } from './purge/purge-work.ts';
import { addQuantities } from './quote/add-quantities.ts';
import { labourOf } from './quote/labour-lines.ts';
import { legWork } from './quote/leg-work.ts';
import { planQuote } from './quote/plan-quote.ts';
import { amountsOf, rulesFor } from './quote/price-of.ts';
import { costsOf, minutesOf } from './quote/quote-option.ts';
import { workQuantities } from './quote/work-quantities.ts';
import { cutList } from './stock/cut-list.ts';
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
function jobWork(job: Job, { effort, frame }: { effort: Effort; frame: FrameGeometry }): JobWork {
  const sites = weldSites(effort.joints, frame, job.fixing);
  const welds = weldWork(sites, { welding: job.welding, tube: job.tube, gap: job.closing.gap, members: frame.members });
  const gas = purgeContext(job, frame, welds);
  return { effort, welds, gas, purge: purgeWork(gas) };
}

/** Labour of one frame [min], ordered as the first quantity says; null while a time is open. */
export function minutesFor(job: Job, work: JobWork): number | null {
  const quantity = firstQuantity(job);
  const minutes = labourOf({ quantities: workQuantities(job, work), job }).minutes(quantity);
  return minutes === null ? null : minutes / quantity;
}

const firstQuantity = ({ quote }: Job): number => quote.quantities[0] ?? 1;

/** A piece of work as the comparison shows it: gas, minutes and money of one frame, ordered as the first quantity says. */
export function pricedAs(job: Job, work: JobWork): Priced {
  const { gas, purge } = work;
  const quantities = workQuantities(job, work);
  const quantity = firstQuantity(job);
  const rules = rulesFor({ quantities, job });
  return {
    purgeSetups: figure(purge.setups, 'count', 'n', [input('n', 'set-ups', purge.setups, 'count')], ['geometry']),
    purgeGas: purgeGasFigure(gas.purge, purge),
    minutes: minutesOf(rules, quantity),
    ...costsOf(amountsOf({ quantities, job, quantity }, rules)),
  };
}

/** A piece of work with the frame that it is spent on, and what it is done for. */
type ScopedWork = Omit<Work, 'scope'> & { readonly scope: 'frame' | WayKey };

/** What a piece of work takes, worked out once for each. */
export function takenOnce(job: SettledJob): (work: Pick<Work, 'effort' | 'frame'>) => JobWork {
  const known = new Map<Effort, JobWork>();
  return (work) => {
    const found = known.get(work.effort) ?? jobWork(job, work);
    known.set(work.effort, found);
    return found;
  };
}

/** The quote of every way that is possible, the legs of the job in each. */
export function quoted(
  job: SettledJob,
  asked: {
    readonly works: readonly ScopedWork[];
    readonly shown: ScopedWork;
    readonly taken: (work: ScopedWork) => JobWork;
    readonly legs: readonly LegPlan[];
    /** How what is shown is purged. */
    readonly purge: PurgePlan | null;
  },
): ReturnType<typeof planQuote> {
  const { works, shown, taken, legs: standing } = asked;
  const legs = legWork(job, standing);
  return planQuote({
    job,
    scope: shown.scope,
    works: works.map((work) => {
      const quantities = workQuantities(job, taken(work));
      const pieces = cutList({ effort: work.effort, legs: standing, tube: job.tube });
      return {
        scope: work.scope,
        quantities: legs === null ? quantities : { ...addQuantities(quantities, legs), pieces },
      };
    }),
    shown: taken(shown),
    legs,
    purge: asked.purge,
  });
}
