import type { Job } from '../../job/job.ts';
import type { CorrectionPlan, ReturnedMember, Way, WayKey } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import type { CheckDimension } from '../../plan/frame.ts';
import type { SetUp } from '../bending/set-up.ts';
import type { SpringbackLaw } from '../bending/springback-law.ts';
import { figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import { measureCheck, type FrameGeometry } from '../frame/frame-geometry.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { differences } from '../returned/differences.ts';
import { fitReadings } from '../returned/fit-readings.ts';
import { misfitPicture } from '../views/misfit-picture.ts';
import { markUnbeaten, recommend } from './compare-ways.ts';
import { LEAST_TAPE } from './correction-targets.ts';
import { correctionWork } from './correction-work.ts';
import { daysOut } from './days-out.ts';
import { fitTolerance } from './fit-tolerance.ts';
import { leaveWay } from './leave-way.ts';
import type { Misreading } from './misreadings.ts';
import { newFrameWay } from './new-frame-way.ts';
import type { Effort, WayDraft } from './outcome.ts';
import { rebendWay } from './rebend-way.ts';
import { scoreSlips } from './slips.ts';
import type { Ground } from './splice/search-splices.ts';
import { spliceWays } from './splice/splice-ways.ts';
import { footFindings } from './trims.ts';
import { risksOf } from './way-risks.ts';
import { whatWouldChange } from './what-would-change.ts';

/** An effort, the frame it is spent on, and the way it belongs to. */
export type Work = { readonly effort: Effort; readonly frame: FrameGeometry; readonly scope: WayKey };

/** What purge, time and money a way's effort comes to. */
export type Priced = Pick<Way, 'purgeSetups' | 'purgeGas' | 'minutes' | 'cost' | 'costAtLeast'>;

/** Everything that the correction takes from the rest of the plan. */
export type CorrectionInput = {
  readonly job: Job;
  readonly wanted: FrameGeometry;
  readonly newFrame: Effort;
  readonly machine: SetUp;
  readonly law: SpringbackLaw;
  /** The wanted frame's sizes with their bands. */
  readonly checks: readonly CheckDimension[];
  /** Members that are bent from their finish. */
  readonly fromFinish: ReadonlySet<string>;
  readonly misreadings: readonly Misreading[];
  /** Prices an effort on the frame as it came back, or on the new one. */
  readonly price: (work: Work) => Priced;
};

/** What a correction comes to: its part of the plan, the frame as it came back, and the work of the way that is shown. */
export type Corrected = {
  readonly correction: CorrectionPlan | null;
  readonly cameBack: FrameGeometry | null;
  readonly chosen: Work | null;
  readonly findings: Finding[];
};

/** The frame that explains the readings, why it came back so, and the ways of putting it right, side by side. */
export function planCorrection(source: CorrectionInput): Corrected {
  const { job, machine, wanted } = source;
  const { cameBack: readings, tube } = job;
  if (readings === null) return { correction: null, cameBack: null, chosen: null, findings: [] };
  const { outsideDiameter } = tube;
  const { angleScatter, planeScatter } = machine;
  const fitted = fitReadings({ wanted, cameBack: readings, outsideDiameter, angleScatter, planeScatter });
  const findings: Finding[] = [...fitted.findings];
  const { returned } = fitted;
  if (returned === null) return { correction: null, cameBack: null, chosen: null, findings };

  const tape = readings.tapeAccuracy;
  const found = differences(wanted, returned, ({ key, index }) => fieldOf(job, key, index));
  const leftOut = new Set(fitted.fit.readings.flatMap(({ field, disagrees }) => (disagrees ? [field] : [])));
  const slips = scoreSlips(source.misreadings, fitted.solved, wanted, leftOut);
  const slipKnown = slips.some(({ explains }) => explains);
  if (slips.length > 0 && !slipKnown) findings.push(finding('no-single-slip', 'note', '/cameBack/readings'));

  const tolerance = fitTolerance(Math.max(0, ...wanted.checks.map((check) => measureCheck(check))));
  const { fixing } = job;
  const begun = correctionWork({ fixing, wanted, returned, outsideDiameter, tape, tolerance });
  const { work } = begun;
  findings.push(...begun.findings, ...footFindings(work.excesses, tape, '/cameBack/readings'));
  const leave = leaveWay(work);
  const asWanted =
    found.every((one) => Math.abs(one.difference.value) <= tape) &&
    [leave.fixingMisfit, leave.cornerMisfit].every(({ value }) => value <= tape) &&
    leave.packing.length === 0;
  if (asWanted) findings.push(finding('came-back-as-wanted', 'note', '/cameBack/readings', { tape }));
  const rebend = rebendWay(work, { machine, fromFinish: source.fromFinish });
  const splices = spliceWays({
    job,
    machine,
    work,
    fromFinish: source.fromFinish,
    minutesOf: (effort) => source.price({ effort, frame: work.uncut, scope: 'splice-own' }).minutes?.value ?? null,
  });
  const { law, checks, fromFinish, newFrame } = source;
  // what half a tape tells is no gain
  const leastGain = Math.max(tape, LEAST_TAPE) / 2;
  // a way that needs no packing may come as near as one that does
  const most = worstOf(leave) + (leave.packing.length > 0 ? leastGain : -leastGain);
  const nearer = (way: WayDraft): boolean => worstOf(way) < most;
  const bent = nearer(rebend.way) ? rebend.way : { ...rebend.way, possible: false, reasons: ['rebend-not-needed'] };
  const spliced = splices.ways.filter(({ way }) => way.key === 'splice-own' || nearer(way));
  if (splices.ways.length > 0 && spliced.length === 0)
    findings.push(finding('splice-gains-nothing', 'note', '/closing/cutMembers', { value: worstOf(leave) }));
  const drafts = [
    leave,
    bent,
    ...spliced.map(({ way }) => way),
    newFrameWay(work, { fixing, tolerance, effort: newFrame, machine, law, fromFinish, checks }),
  ];
  const cameBack: FrameGeometry = {
    ...work.uncut,
    // a size of this frame is typed where it was read
    checks: work.uncut.checks.map((check) => ({ ...check, field: fieldOf(job, check.key, check.index) })),
  };
  const workOf = ({ effort, key }: Pick<WayDraft, 'effort' | 'key'>): Work => ({
    effort,
    frame: key === 'new-frame' ? wanted : cameBack,
    scope: key,
  });
  const ways = markUnbeaten(
    drafts.map((draft) => {
      const { effort, ...way } = draft;
      const priced = source.price(workOf(draft));
      const risks = risksOf(way, {
        outsideDiameter,
        kerf: job.closing.kerf,
        tolerance,
        open: wanted.feet.length > 0,
        slipKnown,
        saddlesRefitted: way.joints.length > 0 || way.key === 'new-frame' ? 0 : effort.welds,
      });
      const days = daysOut(way, { minutes: priced.minutes, daysAtBender: job.closing.daysAtBender });
      return { ...way, ...priced, days, risks, unbeaten: false };
    }),
  );
  const advice = recommend(ways, tolerance);
  const { way: asked } = job.closing;
  const chosen = ways.some((way) => way.key === asked && way.possible) ? asked : advice.recommended;
  if (asked !== null && chosen !== asked)
    findings.push(finding('way-not-possible', 'caution', '/closing/way', { way: asked }));
  findings.push(...splices.findings(chosen));
  findings.push(...rebend.findings.filter((one) => chosen === 'rebend' || one.code === 'rebend-cannot-narrow'));
  const draft = drafts.find((one) => one.key === chosen);
  const shown = spliced.find(({ way }) => way.key === chosen);
  const finished = ways.map((way) =>
    way.key === chosen && shown !== undefined ? { ...way, joints: shown.templated() } : way,
  );
  return {
    chosen: draft === undefined ? null : workOf(draft),
    cameBack,
    correction: {
      fit: fitted.fit,
      members: returnedMembers(cameBack, splices.ground),
      differences: found,
      slips,
      ways: finished,
      alternatives: splices.alternatives.filter((one) => Math.max(one.fixingMisfit, one.cornerMisfit) < most),
      search: splices.search,
      recommended: advice.recommended,
      reason: advice.reason,
      wouldChange: whatWouldChange(ways, advice.recommended, tolerance),
      chosen,
      picture: misfitPicture(wanted, finished),
    },
    findings,
  };
}

const worstOf = ({ fixingMisfit, cornerMisfit }: WayDraft): number => Math.max(fixingMisfit.value, cornerMisfit.value);

/** The reading of a size, where one was taken. */
function fieldOf({ cameBack }: Job, key: string, index: number): string {
  const place = (cameBack?.readings ?? []).findIndex(
    (one) => one.reading === 'size' && one.check === key && one.index === index && one.value !== null,
  );
  return place < 0 ? '' : `/cameBack/readings/${String(place)}/value`;
}

function returnedMembers(frame: FrameGeometry, { stretches }: Ground): ReturnedMember[] {
  return frame.members.map((member, index): ReturnedMember => {
    const { length } = member.centreline;
    return {
      name: member.name,
      closed: member.closed,
      developedLength: figure(length, 'mm', 'L = Σ ℓ', [input('L', 'developed-length', length, 'mm')], ['geometry']),
      pieces: planPieces(member.centreline),
      free: stretches
        .filter((one) => one.member === index)
        .map(({ from, to, startRule, endRule }) => ({ from, to, startRule, endRule })),
    };
  });
}
