import type { SettledJob } from '../../job/job.ts';
import type { CorrectionPlan, ReturnedMember, Way, WayKey } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import { figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { misfitPicture } from '../views/misfit-picture.ts';
import { isWithin, markUnbeaten, recommend } from './compare-ways.ts';
import { findingsOfShown, type CorrectionDrafts } from './correction-drafts.ts';
import { benderOf, daysOpen, daysOut } from './days-out.ts';
import type { Effort, WayDraft } from './outcome.ts';
import type { Ground } from './splice/search-splices.ts';
import { risksOf } from './way-risks.ts';
import { whatWouldChange } from './what-would-change.ts';

/** An effort, the frame it is spent on, and the way it belongs to. */
export type Work = { readonly effort: Effort; readonly frame: FrameGeometry; readonly scope: WayKey };

/** What purge, time and money a way's effort comes to. */
export type Priced = Pick<Way, 'purgeSetups' | 'purgeGas' | 'minutes' | 'cost' | 'costAtLeast'>;

/** What the drafts are priced with, and the frame that they are held against. */
export type CorrectionSetting = {
  readonly job: SettledJob;
  readonly wanted: FrameGeometry;
  /** Prices an effort on the frame as it came back, or on the new one. */
  readonly price: (work: Work) => Priced;
  /** Minutes of labour for one frame alone, for the many layouts that nobody prices; null while a time is open. */
  readonly minutes: (work: Work) => number | null;
};

/** What a correction comes to: its part of the plan, and the work of the way that is shown. */
export type Corrected = {
  readonly correction: CorrectionPlan;
  readonly chosen: Work | null;
  /** Of every way that is possible. */
  readonly works: readonly Work[];
  readonly findings: Finding[];
};

/** The drafts priced and put side by side, with the recommended one and the one that is shown. */
export function planCorrection(drafted: CorrectionDrafts, setting: CorrectionSetting): Corrected {
  const { job, wanted, price, minutes } = setting;
  const { drafts, spliced, splices, cameBack, tolerance, slipKnown, most } = drafted;
  const findings: Finding[] = [...drafted.findings];
  const workOf = ({ effort, key }: Pick<WayDraft, 'effort' | 'key'>): Work => ({
    effort,
    frame: key === 'new-frame' ? wanted : cameBack,
    scope: key,
  });
  const ways = markUnbeaten(
    drafts.map((draft) => {
      const { effort, doubts: _doubts, ...way } = draft;
      const priced = price(workOf(draft));
      const risks = risksOf(way, {
        outsideDiameter: job.tube.outsideDiameter,
        kerf: job.closing.kerf,
        tolerance,
        open: wanted.feet.length > 0,
        slipKnown,
        saddlesRefitted: way.joints.length > 0 || way.key === 'new-frame' ? 0 : effort.welds,
      });
      const days = daysOut(way, { minutes: priced.minutes, ...benderOf(job) });
      return { ...way, ...priced, days, risks, within: isWithin(way, tolerance), unbeaten: false };
    }),
  );
  const advice = recommend(ways, tolerance);
  const { way: asked } = job.closing;
  const chosen = ways.some((way) => way.key === asked && way.possible) ? asked : advice.recommended;
  if (asked !== null && chosen !== asked)
    findings.push(finding('way-not-possible', 'caution', '/closing/way', { way: asked }));
  findings.push(...daysOpen(ways, benderOf(job)), ...findingsOfShown(drafted, chosen));
  const draft = drafts.find((one) => one.key === chosen);
  const shown = spliced.find(({ way }) => way.key === chosen);
  const finished = ways.map((way) =>
    way.key === chosen && shown !== undefined ? { ...way, joints: shown.templated() } : way,
  );
  const minutesOf = (effort: Effort): number | null => minutes({ effort, frame: cameBack, scope: 'splice-own' });
  return {
    chosen: draft === undefined ? null : workOf(draft),
    works: drafts.filter(({ possible }) => possible).map(workOf),
    correction: {
      fit: drafted.fit,
      members: returnedMembers(cameBack, splices.ground),
      differences: drafted.differences,
      slips: drafted.slips,
      ways: finished,
      alternatives: splices
        .alternatives(minutesOf)
        .filter((one) => Math.max(one.fixingMisfit, one.cornerMisfit) < most),
      search: splices.search,
      recommended: advice.recommended,
      reason: advice.reason,
      // costs are final with the legs
      money: [],
      wouldChange: whatWouldChange(ways, advice.recommended, tolerance),
      chosen,
      picture: misfitPicture(wanted, finished),
    },
    findings,
  };
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
