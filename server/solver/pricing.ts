import type { Job } from '../job/job.ts';
import type { WayKey } from '../plan/correction.ts';
import type { Finding } from '../plan/finding.ts';
import type { PurgePlan, WeldingPlan } from '../plan/purge.ts';
import type { QuotePlan } from '../plan/quote.ts';
import type { Effort } from './correction/outcome.ts';
import type { Priced } from './correction/plan-correction.ts';
import { figure, input } from './figure.ts';
import type { FrameGeometry } from './frame/frame-geometry.ts';
import { planPurge } from './purge/plan-purge.ts';
import { planQuote } from './quote/plan-quote.ts';
import { planWelding } from './welding/plan-welding.ts';

/** Purge, welding and price of one effort. */
export type Bill = {
  readonly purge: PurgePlan | null;
  readonly welding: WeldingPlan;
  readonly quote: QuotePlan;
  readonly minutes: number | null;
  readonly setups: number;
  readonly findings: Finding[];
};

/** What an effort on a frame takes in gas, filler, time and money. */
export function billFor(job: Job, work: { effort: Effort; frame: FrameGeometry; scope: 'frame' | WayKey }): Bill {
  const { effort, frame, scope } = work;
  const welded = planWelding({
    welding: job.welding,
    tube: job.tube,
    joints: effort.welds,
    gap: job.closing.gap,
    places: effort.purgeJoints,
  });
  const joints = effort.purgeJoints.map((joint) => ({ ...joint, arcTime: welded.arcTimeEach }));
  const purged = planPurge({ purge: job.purge, welding: job.welding, tube: job.tube, members: frame.members, joints });
  const waiting = purged.purge?.chambers.reduce((sum, chamber) => sum + chamber.printed.time.value, 0) ?? 0;
  const quoted = planQuote({
    rates: job.rates,
    scope,
    quantities: {
      tubeMetres: effort.tubeMetres,
      gasCubicMetres: (purged.purge?.jobGas.value ?? 0) / 1000,
      fillerKilograms: welded.welding.fillerMass.value / 1000,
      counts: {
        bend: effort.bends,
        cut: effort.cuts,
        fit: effort.welds,
        purge: purged.setups,
        weld: effort.welds,
        finish: effort.welds,
      },
      arcMinutes: (welded.arcTimeEach * effort.welds) / 60,
      purgeMinutes: waiting / 60,
    },
  });
  return {
    purge: purged.purge,
    welding: welded.welding,
    quote: quoted.quote,
    minutes: quoted.minutes,
    setups: purged.setups,
    findings: [...welded.findings, ...purged.findings, ...quoted.findings],
  };
}

/** A bill as the comparison shows it. */
export function pricedAs(bill: Bill): Priced {
  const gas = bill.purge?.purgeGas ?? figure(0, 'L', 'V', [input('n', 'joints', 0, 'count')], ['geometry']);
  const { quote, minutes } = bill;
  const lines = quote.lines.filter(({ amount }) => amount !== null).length;
  const sum = figure(quote.subtotal, 'minor', 'Σ lines', [input('n', 'quote-lines', lines, 'count')], ['typed']);
  return {
    purgeSetups: figure(bill.setups, 'count', 'n', [input('n', 'chambers', bill.setups, 'count')], ['geometry']),
    purgeGas: gas,
    minutes:
      minutes === null
        ? null
        : figure(minutes, 'min', 't = Σ (set-up + n each)', [input('t', 'minutes', minutes, 'min')], ['typed']),
    cost: quote.open.length > 0 ? null : sum,
    costAtLeast: sum,
  };
}
