import type { CutClosing } from '../../../job/closing.ts';
import type { Trim, WayKey, WorkStep } from '../../../plan/correction.ts';
import type { Joint } from '../../../plan/joint.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { WeldPlace } from '../../welding/weld-sites.ts';
import type { CorrectionWork } from '../correction-work.ts';
import type { CutJoint } from '../cut-joint.ts';
import type { FaceContext } from '../joint-face.ts';
import { planJoints } from '../joint-plan.ts';
import { drawnMembers } from '../leave-way.ts';
import { outcomeFigures } from '../outcome-figures.ts';
import {
  countFigure,
  judge,
  largest,
  type Doubt,
  type Effort,
  type EffortPiece,
  type JudgeContext,
  type Outcome,
  type WayDraft,
} from '../outcome.ts';
import { trimsOf } from '../trims.ts';
import { SHRINKAGE_DOUBT, TWIST_TO_SCRIBE } from '../weld-limits.ts';
import { trimSteps, workSteps } from '../work-steps.ts';
import type { Centreline } from '../../geometry/centreline.ts';
import { SIDES } from '../../returned/lines.ts';
import { sizesOf, type Size } from '../../returned/sizes.ts';
import { splicedLines } from './spliced-lines.ts';
import { assembler } from './assemble.ts';
import type { Candidate } from './candidate.ts';
import { cutJoints } from './cut-joints.ts';
import type { Ground } from './search-splices.ts';
import { splicedFrame } from './spliced-frame.ts';

/** What every splice is measured and described with. */
export type SpliceContext = {
  readonly work: CorrectionWork;
  readonly ground: Ground;
  readonly closing: CutClosing;
  readonly faces: FaceContext;
};

/** A splice as one of the ways, what there is to say about it, and its joints once more with their wraps. */
export type SplicedWay = {
  readonly way: WayDraft;
  readonly findings: Finding[];
  readonly templated: () => Joint[];
};

/**
 * Measures a solved splice and says how it is cut, closed and checked.
 *
 * @param more findings of the splice that are known already
 * @param extra what else than the readings leaves the frame in doubt
 */
export function spliceWay(
  key: WayKey,
  { splice }: Pick<Candidate, 'splice'>,
  context: SpliceContext,
  more: readonly Finding[] = [],
  extra: readonly Doubt[] = [],
): SplicedWay {
  const { work, ground, closing } = context;
  const { actual } = work;
  const corrected = splicedFrame(splice, actual, ground.graph);
  const asMoved = judge(work, corrected);
  const assembled = assembler(splice, actual);
  const sizes = sizesOf(work.wanted, work.outsideDiameter);
  const base = sizedAgain(asMoved, sizes, splicedLines(splice, actual, ground.graph));
  const asAssembled = (context: JudgeContext, pulledMore = 0): Outcome => {
    const motions = assembled(context.actual, pulledMore);
    const outcome = judge(context, splicedFrame(splice, context.actual, ground.graph, motions));
    return sizedAgain(outcome, sizes, splicedLines({ ...splice, motions }, context.actual, ground.graph));
  };
  const varied = work.variations.map((variation) => asAssembled(variation));
  const unsure = SHRINKAGE_DOUBT * closing.shrinkage;
  const pulled: Doubt[] = unsure > 0 ? [{ from: 'shrinkage', outcomes: [asAssembled(work, unsure)] }] : [];
  const trims = trimsOf(work.excesses, work.tape);
  const cuts = cutJoints(splice, actual, base.lay);
  const planned = planJoints(cuts, actual, closing, context.faces);
  const findings = [...more, ...planned.findings, ...pushed(planned.joints)];
  const stops = findings.filter(({ grade }) => grade === 'stop');
  const way: WayDraft = {
    key,
    possible: stops.length === 0,
    reasons: [...new Set(stops.map(({ code }) => code))],
    ...outcomeFigures(base, varied, [...pulled, ...extra]),
    largestKink: largest(planned.joints, ({ kink }) => kink, 'deg'),
    largestHiLo: largest(planned.joints, ({ hiLo }) => hiLo, 'mm'),
    welds: countFigure(weldsOf(cuts), 'joints'),
    joints: planned.joints,
    rebends: [],
    trims,
    packing: [],
    steps: stepsOf(cuts, planned.joints, trims),
    members: drawnMembers(corrected, base.lay),
    effort: effortOf(cuts, planned.joints, trims),
  };
  const templated = () => planJoints(cuts, actual, closing, { ...context.faces, templates: true }).joints;
  return { way, findings, templated };
}

const weldsOf = (cuts: readonly CutJoint[]): number =>
  cuts.reduce((sum, { letIn }) => sum + (letIn === null ? 1 : 2), 0);

/**
 * What a splice takes of the shop.
 *
 * @param joints the cuts as they are planned, in the same order
 */
export function effortOf(cuts: readonly CutJoint[], joints: readonly Joint[], trims: readonly Trim[]): Effort {
  const pieces = cuts.flatMap(({ letIn }) => (letIn === null ? [] : [letIn]));
  const bent = pieces.filter(({ radius }) => radius !== null);
  return {
    welds: weldsOf(cuts),
    cuts: joints.reduce((sum, joint) => sum + cutsOf(joint), 0) + trims.length,
    bends: bent.length,
    bentTube: bent.reduce((sum, { length }) => sum + length, 0),
    pieces: sawnOff(joints),
    joints: cuts.flatMap(({ member: { name: member }, stationA, stationB, letIn }, index): WeldPlace[] => {
      const joint = index + 1;
      if (letIn === null) return [{ kind: 'splice', joint, side: '', member, station: (stationA + stationB) / 2 }];
      return [
        { kind: 'let-in', joint, side: 'A', member, station: stationA },
        { kind: 'let-in', joint, side: 'B', member, station: stationB },
      ];
    }),
  };
}

/**
 * Sizes as a tape finds them on the closed frame: places that a cut took away are no more, so that each size is taken
 * again by its definition.
 */
const sizedAgain = (outcome: Outcome, sizes: readonly Size[], lines: readonly Centreline[]): Outcome => ({
  ...outcome,
  sizes: outcome.sizes.map((one) => {
    const size = sizes.find(({ check }) => check.key === one.check.key && check.index === one.check.index);
    return { ...one, after: size?.value(lines, SIDES.centre) ?? one.after };
  }),
});

/** New tube as it is sawn off the bar. */
const sawnOff = (joints: readonly Joint[]): EffortPiece[] =>
  joints.flatMap(({ number, letIn }): EffortPiece[] =>
    letIn === null ? [] : [{ kind: 'let-in', of: String(number), part: 1, parts: 1, length: letIn.cutLength }],
  );

/** How a joint is cut: a dart keeps its hinge, and what is narrower than two kerfs comes out in one pass. */
const cutKey = (joint: Joint | undefined): string =>
  joint?.kind === 'dart' ? 'cut-dart' : joint?.scrap.value === 0 ? 'cut-once' : 'cut';

/** Passes of the saw: one for each face, or one for both where no second is made; and two for a piece that is let in. */
const cutsOf = (joint: Joint): number => (cutKey(joint) === 'cut' ? 2 : 1) + (joint.letIn === null ? 0 : 2);

/** A joint that stands at the edge of where it may [mm]; our own choice. */
const AT_EDGE = 0.5;

/** Joints that a rule keeps from where they would rather stand. */
const pushed = (joints: readonly Joint[]): Finding[] =>
  joints.flatMap(({ number, member, place, range, bounds }) => {
    const rule = place - range.from < AT_EDGE ? bounds.from : range.to - place < AT_EDGE ? bounds.to : null;
    if (rule === null || range.to - range.from < 2 * AT_EDGE) return [];
    return [finding('joint-pushed', 'note', '/closing/barred', { joint: number, member, keepOut: rule })];
  });

/**
 * The order of the work: marks first, then the cuts, the joint on the longest member last, so that the frame holds its
 * shape as long as it can; that joint is closed first, sizes are checked while only tacks hold, and the rest follows.
 */
function stepsOf(cuts: readonly CutJoint[], joints: readonly Joint[], trims: readonly Trim[]): WorkStep[] {
  const longest = Math.max(0, ...cuts.map(({ member }) => member.centreline.length));
  const numbered = cuts.map((cut, index) => ({ cut, joint: index + 1 }));
  const main = numbered.filter(({ cut }) => cut.member.centreline.length === longest);
  const others = numbered.filter(({ cut }) => cut.member.centreline.length < longest);
  const step = (key: string, joint = 0, data: WorkStep['data'] = {}): WorkStep => ({ key, joint, data });
  const each = (key: string, of: typeof numbered): WorkStep[] =>
    of.map(({ cut, joint }) => step(key, joint, { joint, member: cut.member.name }));
  return [
    step('mark-all'),
    ...each(
      'scribe-across',
      numbered.filter(({ cut }) => Math.abs(cut.twist) > TWIST_TO_SCRIBE),
    ),
    step('hold-shape'),
    ...[...others, ...main].map(({ cut, joint }) =>
      step(cutKey(joints[joint - 1]), joint, { joint, member: cut.member.name }),
    ),
    ...each(
      'make-let-in',
      numbered.filter(({ cut }) => cut.letIn !== null),
    ),
    step('dress-faces'),
    ...each('close-and-tack', [...main, ...others]),
    step('check-sizes'),
    step('weld-opposite'),
    ...workSteps(trimSteps(trims)),
  ];
}
