import type { Job } from '../../job/job.ts';
import type { CorrectionPlan, ReturnedMember, Way, WayKey } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Figure } from '../../plan/figure.ts';
import type { SetUp } from '../bending/set-up.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { markUnbeaten, recommend } from './compare-ways.ts';
import { fitTolerance } from './fit-tolerance.ts';
import { flatFrame } from './flat-frame.ts';
import { differences, measureCheck } from './measured-frame.ts';
import { leaveWay, newFrameWay, rebendWay } from './other-ways.ts';
import type { Effort, WayDraft } from './outcome.ts';
import type { Misreading } from './misreadings.ts';
import { scoreSlips } from './slips.ts';
import type { Target } from './splice.ts';
import { spliceWay, type Correcting } from './splice-way.ts';
import { footExcesses, trimmedFeet, type FootExcess } from './trims.ts';

/** An effort, the frame it is spent on, and the way it belongs to. */
export type Work = { readonly effort: Effort; readonly frame: FrameGeometry; readonly scope: WayKey };

/** What purge, time and money a way's effort comes to. */
export type Priced = Pick<Way, 'purgeSetups' | 'purgeGas' | 'minutes' | 'cost' | 'costAtLeast'>;

/** Everything that the correction takes from the rest of the plan. */
export type CorrectionInput = {
  readonly job: Job;
  readonly wanted: FrameGeometry;
  readonly cameBack: FrameGeometry;
  readonly newFrame: Effort;
  readonly machine: SetUp;
  readonly misreadings: readonly Misreading[];
  /** Prices an effort on the frame as it came back, or on the new one. */
  readonly price: (work: Work) => Priced;
};

/** Ways of putting a frame right that came back wrong, side by side. */
export function planCorrection(source: CorrectionInput): {
  correction: CorrectionPlan | null;
  chosen: Work | null;
  findings: Finding[];
} {
  const { job, machine } = source;
  const { cameBack: readings } = job;
  if (readings === null) return { correction: null, chosen: null, findings: [] };
  if (readings.frame.shape !== job.frame.shape) {
    const data = { value: readings.frame.shape, wanted: job.frame.shape };
    return {
      correction: null,
      chosen: null,
      findings: [finding('came-back-other-shape', 'stop', '/cameBack/frame/shape', data)],
    };
  }
  const wanted = flatFrame(source.wanted);
  const cameBack = flatFrame(source.cameBack);
  if (wanted === undefined || cameBack === undefined) {
    return { correction: null, chosen: null, findings: [finding('cut-not-planar', 'stop', '/frame')] };
  }
  const tape = readings.tapeAccuracy;
  const tube = job.tube;
  const findings: Finding[] = [];
  const found = differences(wanted, cameBack, { doubt: tape, from: ['tape'] });
  if (found.every((one) => Math.abs(one.difference.value) <= tape)) {
    findings.push(finding('came-back-as-wanted', 'note', '/cameBack/frame', { tape }));
  }
  const scores = job.frame.shape === 'hoop' ? scoreSlips(source.misreadings, cameBack, tape) : [];
  if (scores.length > 0 && !scores.some((score) => score.explains)) {
    findings.push(finding('no-single-slip', 'note', '/cameBack/frame'));
  }
  const excesses = footExcesses(wanted, cameBack);
  findings.push(...footFindings(excesses, tape));
  const actual = trimmedFeet(cameBack, excesses);
  const work: Correcting = {
    wanted,
    actual,
    targets: targetsOf(wanted, actual),
    closing: job.closing,
    context: {
      tube,
      tape,
      paperThickness: job.closing.paperThickness,
      templateStations: job.print.templateStations,
      templates: false,
    },
  };
  const base = { trims: trimsOf(excesses, tape) };
  const { spread } = job.closing;
  const splices = [
    spliceWay('splice-one', { two: false, turned: false, spread }, work, base),
    spliceWay('splice-two', { two: true, turned: false, spread }, work, base),
    spliceWay('splice-turned', { two: false, turned: true, spread }, work, base),
  ];
  const rebend = rebendWay(work, machine, base);
  const drafts = [
    leaveWay(work, base),
    rebend.way,
    ...splices.map((splice) => splice.way),
    newFrameWay(work, machine, source.newFrame),
  ];
  const workOf = ({ effort, key }: Pick<WayDraft, 'effort' | 'key'>): Work => ({
    effort,
    frame: key === 'new-frame' ? wanted : cameBack,
    scope: key,
  });
  const ways = markUnbeaten(
    drafts.map((draft: WayDraft) => {
      const { effort: _, ...way } = draft;
      return { ...way, ...source.price(workOf(draft)), unbeaten: false };
    }),
  );
  const tolerance = fitTolerance(Math.max(0, ...wanted.checks.map((check) => measureCheck(check))));
  const advice = recommend(eligible(ways, job), tolerance);
  const { way: asked } = job.closing;
  const chosen = ways.some((way) => way.key === asked && way.possible) ? asked : advice.recommended;
  if (asked !== null && chosen !== asked) {
    findings.push(finding('way-not-possible', 'caution', '/closing/way', { way: asked }));
  }
  const chosenSplice = splices.find((splice) => splice.way.key === chosen);
  const chosenFindings = chosenSplice?.findings ?? [];
  // where no splice is possible, say why the plain one is not
  const blocked = splices.some((splice) => splice.way.possible) ? [] : (splices[0]?.findings ?? []);
  findings.push(...(chosenFindings.length > 0 ? chosenFindings : blocked));
  findings.push(...rebend.findings.filter((one) => chosen === 'rebend' || one.code === 'rebend-cannot-narrow'));
  const draft = drafts.find((one) => one.key === chosen);
  return {
    chosen: draft === undefined ? null : workOf(draft),
    correction: {
      members: cameBack.members.map(returnedMember),
      differences: found,
      slips: scores,
      ways: ways.map((way) =>
        way.key === chosen && chosenSplice !== undefined ? { ...way, joints: chosenSplice.templated() } : way,
      ),
      recommended: advice.recommended,
      reason: advice.reason,
      chosen,
    },
    findings,
  };
}

function returnedMember(member: MemberGeometry): ReturnedMember {
  const { length } = member.centreline;
  return {
    name: member.name,
    closed: member.closed,
    developedLength: figure(length, 'mm', 'L = Σ ℓ', [input('L', 'developed-length', length, 'mm')], ['geometry']),
    pieces: planPieces(member.centreline),
  };
}

/** The user may ask for one or two joints a member; a recommendation then keeps to that. */
const eligible = (ways: readonly Way[], job: Job): readonly Way[] =>
  ways.filter(
    (way) =>
      !(job.closing.joints === 'one' && way.key === 'splice-two') &&
      !(job.closing.joints === 'two' && (way.key === 'splice-one' || way.key === 'splice-turned')),
  );

const targetsOf = (wanted: FrameGeometry, actual: FrameGeometry): Target[] =>
  [
    ...actual.feet.map((spot, index) => ({ spot, goal: wanted.feet[index] })),
    ...actual.corners.map((spot, index) => ({ spot, goal: wanted.corners[index] })),
  ].flatMap(({ spot, goal }) => (goal === undefined ? [] : [{ spot, wanted: goal.point }]));

const lengthFigure = (value: number, tape: number): Figure =>
  figure(
    value,
    'mm',
    't = reach − reach of the wanted leg',
    [input('t', 'leg-excess', value, 'mm')],
    ['geometry'],
    band(Math.SQRT2 * tape, 'tape'),
  );

const trimsOf = (excesses: readonly FootExcess[], tape: number) =>
  excesses
    .filter((one) => one.excess > tape)
    .map((one) => ({
      member: one.foot.member,
      end: one.atFinish ? ('finish' as const) : ('start' as const),
      length: lengthFigure(one.excess, tape),
    }));

function footFindings(excesses: readonly FootExcess[], tape: number): Finding[] {
  return excesses.flatMap((one) => {
    const data = { member: one.foot.member, end: one.atFinish ? 'finish' : 'start', value: Math.abs(one.excess) };
    if (one.excess > tape) return [finding('leg-to-be-trimmed', 'note', '/cameBack/frame', data)];
    if (one.excess < -tape) return [finding('leg-too-short', 'caution', '/cameBack/frame', data)];
    return [];
  });
}
