import type { Job, SettledJob } from '../job/job.ts';
import type { CorrectionPlan } from '../plan/correction.ts';
import type { Plan } from '../plan/plan.ts';
import { bentFrame, type BentFrame, type BentFrom } from './bent-frame.ts';
import { planCorrection } from './correction/plan-correction.ts';
import { benderOf } from './correction/days-out.ts';
import { withCosts } from './correction/with-costs.ts';
import { planFinish } from './finish/plan-finish.ts';
import { NO_MEMORY, type Memory } from './memory.ts';
import { minutesFor, pricedAs, quoted, takenOnce } from './pricing.ts';
import { planPurge } from './purge/plan-purge.ts';
import { madeLines, madeVariations } from './site/made-lines.ts';
import type { SiteSource } from './site/laid-site.ts';
import { planSite, type PlannedSite } from './site/plan-site.ts';
import { isTyped } from './site/typed-site.ts';
import { cutList } from './stock/cut-list.ts';
import { planStock } from './stock/plan-stock.ts';
import { resolveGrade } from './tube/grades.ts';
import { planViews } from './views/plan-views.ts';
import { planWelding } from './welding/plan-welding.ts';
import { settledShrinkage } from './welding/shrinkage.ts';

const NOTHING: Plan = {
  version: 1,
  findings: [],
  tube: null,
  springback: null,
  frame: null,
  correction: null,
  purge: null,
  welding: null,
  finish: null,
  site: null,
  stock: null,
  quote: null,
  views: [],
};

/**
 * Everything that can be said about one job, in order: tube, springback, frame and bends, the frame that came back
 * and the ways to put it right, welds, purge and finish of the chosen way (or of the whole frame), the site that it goes to,
 * the bars that it is sawn from, its price, views.
 * Pure, deterministic and total: what cannot be made gives findings and leaves its part null.
 *
 * @param memory lets a plan use again what an earlier one found for the same tube, bends and readings
 */
export function plan(typed: Job, memory: Memory = NO_MEMORY): Plan {
  const job: SettledJob = { ...typed, closing: { ...typed.closing, shrinkage: settledShrinkage(typed) } };
  const from = bentFrom(job);
  const fromKey = JSON.stringify(from);
  const bent = memory.bentFrame(fromKey, () => bentFrame(from));
  const begun = { ...NOTHING, tube: bent.tube, springback: bent.springback };
  if (bent.wanted === null) return { ...begun, findings: [...bent.findings] };
  const { wanted, fromFinish, newFrame, drafts } = bent;
  const taken = takenOnce(job);
  const corrected =
    drafts === null
      ? null
      : planCorrection(drafts, {
          job,
          wanted,
          price: (work) => pricedAs(job, taken(work)),
          minutes: (work) => minutesFor(job, taken(work)),
        });
  const correction = corrected?.correction ?? null;
  const shown = corrected?.chosen ?? { effort: newFrame, frame: wanted, scope: 'frame' as const };
  const work = taken(shown);
  const joints = correction?.ways.find(({ key }) => key === shown.scope)?.joints ?? [];
  const { welds } = work;
  const { welding, ...welded } = planWelding({ job, typed, welds, joints, frame: shown.frame, wanted });
  const { purge, ...purged } = planPurge(work.gas);
  const { finish, ...finished } = planFinish({
    finish: job.finish,
    welds,
    symbols: job.welding.symbols,
    tube: job.tube,
    backing: job.welding.backing,
  });
  const stood = siteOf(job, { bent, fromKey, correction }, memory);
  const legs = stood?.site.legs ?? [];
  const { stock, ...sawn } = planStock({
    job,
    pieces: cutList({ effort: shown.effort, legs, tube: job.tube }),
    tubes: bent.straightTubes,
  });
  const works = corrected === null || corrected.chosen === null ? [shown] : corrected.works;
  const bill = quoted(job, { works, shown, taken, legs, purge });
  return {
    ...begun,
    frame: bent.frame,
    correction:
      correction === null || drafts === null
        ? null
        : withCosts(correction, bill.quote.options, {
            bender: benderOf(job),
            tolerance: drafts.tolerance,
          }),
    purge,
    welding,
    finish,
    site: stood?.site ?? null,
    stock,
    quote: bill.quote,
    views: planViews({
      wanted,
      cameBack: drafts?.cameBack ?? null,
      correction,
      purge,
      welding,
      fromFinish,
      outsideDiameter: job.tube.outsideDiameter,
    }),
    findings: [bent, corrected, welded, purged, finished, stood, sawn, bill].flatMap((part) => part?.findings ?? []),
  };
}

type DrawnFrame = Exclude<BentFrame, { readonly wanted: null }>;

/** What there is to say of the site that a frame goes to; null where nothing of it was typed. */
function siteOf(
  { site, fixing, tube, closing, print }: SettledJob,
  { bent, fromKey, correction }: { bent: DrawnFrame; fromKey: string; correction: CorrectionPlan | null },
  memory: Memory,
): PlannedSite | null {
  if (!isTyped(site)) return null;
  const { gap, shrinkage, paperThickness } = closing;
  const { wanted, drafts, anewInDoubt } = bent;
  const source: SiteSource = {
    site,
    wanted,
    fixing,
    made: madeLines(wanted, correction),
    tube,
    grade: resolveGrade(tube.grade),
    gap,
    shrinkage,
    paperThickness,
    templateStations: print.templateStations,
  };
  // what is in doubt of the frame follows from these, and is laid only where the site is planned
  const key = JSON.stringify([fromKey, correction?.chosen, source]);
  return memory.site(key, () => {
    const way = drafts?.drafts.find((draft) => draft.key === correction?.chosen);
    return planSite({ ...source, madeOff: madeVariations(source.made, way?.doubts ?? anewInDoubt()) });
  });
}

/** The part of a job that its bends and their correction depend on. */
function bentFrom({
  tube,
  machine,
  bending,
  frame,
  fixing,
  cameBack,
  print,
  closing,
  purge,
  welding,
  site,
  stock,
}: SettledJob): BentFrom {
  const { way: _way, daysAtBender: _days, ...cut } = closing;
  return {
    tube,
    machine,
    bending,
    frame,
    fixing,
    cameBack,
    print,
    closing: cut,
    holes: purge.holes,
    barJoints: stock.joints,
    quality: welding.quality,
    // what a correction keeps clear of, with what that and the frame stand by: levels that are read again while nothing
    // is kept clear of, legs and loads change no bend
    site: site.things.some((thing) => thing.clearance !== null)
      ? { ...site, directions: [], legs: [], load: null }
      : null,
  };
}
