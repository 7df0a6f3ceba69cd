import type { CorrectionPlan, WayKey } from '../../plan/correction.ts';
import type { CheckDimension } from '../../plan/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import type { BentFrom } from '../bent-frame.ts';
import type { SetUp } from '../bending/set-up.ts';
import type { SpringbackLaw } from '../bending/springback-law.ts';
import { finding } from '../finding.ts';
import { measureCheck, type FrameGeometry } from '../frame/frame-geometry.ts';
import { differences } from '../returned/differences.ts';
import { fitReadings } from '../returned/fit-readings.ts';
import type { Post } from './corrected.ts';
import { LEAST_TAPE } from './correction-targets.ts';
import { correctionWork } from './correction-work.ts';
import { fitTolerance } from './fit-tolerance.ts';
import { leaveWay } from './leave-way.ts';
import type { Misreading } from './misreadings.ts';
import { newFrameWay } from './new-frame-way.ts';
import type { Effort, WayDraft } from './outcome.ts';
import { isOutOfReach } from './post-room.ts';
import { rebendWay, type CutLengthOn } from './rebend-way.ts';
import { scoreSlips } from './slips.ts';
import type { SplicedWay } from './splice/splice-way.ts';
import { spliceWays, type SpliceWays } from './splice/splice-ways.ts';
import { footFindings } from './trims.ts';

/** What the ways are worked out from: nothing of gas, welding or money is in it. */
export type DraftSource = {
  readonly job: BentFrom;
  readonly wanted: FrameGeometry;
  /** Things of the site that a correction keeps clear of. */
  readonly posts: readonly Post[];
  readonly newFrame: Effort;
  /** What there is to say of making it new, and nothing else. */
  readonly newFrameFindings: readonly Finding[];
  readonly machine: SetUp;
  readonly law: SpringbackLaw;
  /** The wanted frame's sizes with their bands. */
  readonly checks: readonly CheckDimension[];
  /** Members that are bent from their finish. */
  readonly fromFinish: ReadonlySet<string>;
  readonly misreadings: readonly Misreading[];
  readonly cutLengthOn: CutLengthOn;
};

/** The frame as it came back, why, and the ways of putting it right, before they are priced and one of them is shown. */
export type CorrectionDrafts = Pick<CorrectionPlan, 'fit' | 'differences' | 'slips'> & {
  readonly cameBack: FrameGeometry;
  readonly slipKnown: boolean;
  /** How far a fixing point may be off [mm]. */
  readonly tolerance: number;
  /** Off by more than this a way gains nothing on leaving the frame as it is [mm]. */
  readonly most: number;
  readonly drafts: readonly WayDraft[];
  readonly spliced: readonly SplicedWay[];
  readonly splices: SpliceWays;
  readonly rebendFindings: readonly Finding[];
  readonly newFrameFindings: readonly Finding[];
  readonly findings: readonly Finding[];
};

/** Drafts of the ways, or what there is to say where no frame explains the readings or nothing came back. */
export function correctionDrafts(
  source: DraftSource,
): CorrectionDrafts | { readonly cameBack: null; readonly findings: readonly Finding[] } {
  const { job, machine, wanted } = source;
  const { cameBack: readings, tube } = job;
  if (readings === null) return { cameBack: null, findings: [] };
  const { outsideDiameter } = tube;
  const { angleScatter, planeScatter } = machine;
  const fitted = fitReadings({ wanted, cameBack: readings, outsideDiameter, angleScatter, planeScatter });
  const findings: Finding[] = [...fitted.findings];
  const { returned } = fitted;
  if (returned === null) return { cameBack: null, findings };

  const tape = readings.tapeAccuracy;
  const found = differences(wanted, returned, ({ key, index }) => fieldOf(job, key, index));
  const leftOut = new Set(fitted.fit.readings.flatMap(({ field, disagrees }) => (disagrees ? [field] : [])));
  const slips = scoreSlips(source.misreadings, fitted.solved, wanted, leftOut);
  const slipKnown = slips.some(({ explains }) => explains);
  if (slips.length > 0 && !slipKnown) findings.push(finding('no-single-slip', 'note', '/cameBack/readings'));

  const tolerance = fitTolerance(Math.max(0, ...wanted.checks.map((check) => measureCheck(check))));
  const { fixing } = job;
  const begun = correctionWork({ fixing, posts: source.posts, wanted, returned, outsideDiameter, tape, tolerance });
  const { work } = begun;
  findings.push(...begun.findings, ...footFindings(work.excesses, tape, '/cameBack/readings'));
  const leave = leaveWay(work);
  const asWanted =
    found.every((one) => Math.abs(one.difference.value) <= tape) &&
    [leave.fixingMisfit, leave.cornerMisfit].every(({ value }) => value <= tape) &&
    leave.packing.length === 0;
  if (asWanted) findings.push(finding('came-back-as-wanted', 'note', '/cameBack/readings', { tape }));
  const rebend = rebendWay(work, { machine, fromFinish: source.fromFinish, cutLengthOn: source.cutLengthOn });
  const posts = work.posts.filter((post) => !isOutOfReach(post, worstOf(leave), outsideDiameter));
  const splices = spliceWays({ job, machine, work, posts, fromFinish: source.fromFinish });
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
  return {
    fit: fitted.fit,
    differences: found,
    slips,
    slipKnown,
    tolerance,
    most,
    cameBack: {
      ...work.uncut,
      // a size of this frame is typed where it was read
      checks: work.uncut.checks.map((check) => ({ ...check, field: fieldOf(job, check.key, check.index) })),
    },
    drafts: [
      leave,
      bent,
      ...spliced.map(({ way }) => way),
      newFrameWay(work, { fixing, tolerance, effort: newFrame, machine, law, fromFinish, checks }),
    ],
    spliced,
    splices,
    rebendFindings: rebend.findings,
    newFrameFindings: source.newFrameFindings,
    findings,
  };
}

/** What there is to say while a way is shown. */
export const findingsOfShown = (
  { splices, rebendFindings, newFrameFindings }: CorrectionDrafts,
  shown: WayKey | null,
): Finding[] => [
  ...splices.findings(shown),
  ...rebendFindings.filter((one) => shown === 'rebend' || one.code === 'rebend-cannot-narrow'),
  ...(shown === 'new-frame' ? newFrameFindings : []),
];

const worstOf = ({ fixingMisfit, cornerMisfit }: WayDraft): number => Math.max(fixingMisfit.value, cornerMisfit.value);

/** The reading of a size, where one was taken. */
function fieldOf({ cameBack }: Pick<BentFrom, 'cameBack'>, key: string, index: number): string {
  const place = (cameBack?.readings ?? []).findIndex(
    (one) => one.reading === 'size' && one.check === key && one.index === index && one.value !== null,
  );
  return place < 0 ? '' : `/cameBack/readings/${String(place)}/value`;
}
