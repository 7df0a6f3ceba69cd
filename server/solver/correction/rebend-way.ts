import type { WeldPlace } from '../welding/weld-sites.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Figure } from '../../plan/figure.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { DEGREES, RADIANS } from '../geometry/angle.ts';
import { bentTube } from './bent-tube.ts';
import { drawnMembers, unjoined } from './leave-way.ts';
import { judgeAll, type CorrectionWork } from './correction-work.ts';
import {
  countFigure,
  judge,
  type Doubt,
  type Effort,
  type EffortPiece,
  type JudgeContext,
  type Outcome,
  type WayDraft,
} from './outcome.ts';
import { outcomeFigures } from './outcome-figures.ts';
import { withPlacedRoots } from './placed-roots.ts';
import { changeFor, rebentFrame, solveRebend, type BendTurn, type Rebending } from './rebend.ts';
import { rebendFindings } from './rebend-findings.ts';
import { saddleWelds } from './new-frame-welds.ts';
import { rebendRows } from './rebend-rows.ts';
import { asCorrected, relaidFrame, type RelaidFrame } from './relaid-frame.ts';
import type { RebendShop } from './turn-limits.ts';
import { footExcesses, trimsOf } from './trims.ts';
import { trimSteps, workSteps, type Step } from './work-steps.ts';

/** What is sawn off a bar for a member that is cut anew, on the members as they are then [mm]. */
export type CutLengthOn = (member: MemberGeometry, members: readonly MemberGeometry[]) => Figure;

/** Turn the existing bends further or less and roll the crowns again, and say what is left over. */
export function rebendWay(
  source: CorrectionWork,
  shop: RebendShop & { readonly cutLengthOn: CutLengthOn },
): { way: WayDraft; findings: Finding[] } {
  const { work, rebending } = withLegs(source, shop);
  const { actual, outsideDiameter, tape } = work;
  const turns = rebending.turns.filter(({ turn }) => turn !== 0);
  const relaidBy = (asked: readonly BendTurn[], context: JudgeContext) =>
    relaidFrame(context.actual, withPlacedRoots(context, changeFor(asked, shop.fromFinish)));
  const relaid = relaidBy(turns, work);
  const correctedBy = (asked: readonly BendTurn[]) => (context: JudgeContext) =>
    asCorrected(context.actual, relaidBy(asked, context), { wanted: work.wanted, outsideDiameter });
  const { base, variations } = judgeAll(work, correctedBy(turns));
  const scatter: Doubt = { from: 'angle-scatter', outcomes: scattered(work, turns, shop, correctedBy) };
  const findings = rebendFindings({ work, rebending, relaid, after: base });
  const why = whyNot(actual, rebending, turns);
  const trims = trimsOf(work.excesses, tape);
  const refits = turns.length === 0 ? [] : refittedWelds(actual, relaid);
  const anew = newTube(actual, relaid, shop.cutLengthOn);
  const way: WayDraft = {
    key: 'rebend',
    possible: why === null,
    reasons: why === null ? [] : [why],
    ...outcomeFigures(base, variations, [scatter]),
    ...unjoined,
    welds: countFigure(refits.length, 'saddles-refitted'),
    rebends: rebendRows(actual, turns, shop.machine),
    trims,
    packing: [],
    steps: workSteps(rebendSteps(actual, turns, relaid, trimSteps(trims))),
    members: drawnMembers(correctedBy(turns)(work), base.lay),
    effort: {
      welds: refits.length,
      // a saddle is cut off and dressed in one; new tube is sawn at both ends beside that
      cuts: trims.length + refits.length + 2 * anew.length,
      ...bendsOf(actual, relaid, { turns, anew }),
      pieces: anew,
      joints: refits,
    },
  };
  return { way, findings: why === null ? findings : [...findings, finding(why, 'note', '/closing/way')] };
}

/** Bends that are turned, and those of members that are made anew; with the tube that goes through the bender for them. */
function bendsOf(
  actual: FrameGeometry,
  relaid: RelaidFrame,
  { turns, anew }: { readonly turns: readonly BendTurn[]; readonly anew: readonly EffortPiece[] },
): Pick<Effort, 'bends' | 'bentTube'> {
  const isAnew = ({ name }: { readonly name: string }): boolean => anew.some(({ of }) => of === name);
  const turned = turns.filter(({ member: name }) => !isAnew({ name }));
  const bent = relaid.members
    .filter(isAnew)
    .map(({ centreline }) => ({ ...centreline, arcs: centreline.pieces.filter(({ kind }) => kind === 'arc').length }))
    .filter(({ arcs }) => arcs > 0);
  return {
    bends: bent.reduce((sum, { arcs }) => sum + arcs, turned.length),
    bentTube: bent.reduce((sum, { length }) => sum + length, bentTube(actual, turned)),
  };
}

/** Rounds in which legs and turns are found together; each leaves a hundredth of what the one before left. */
const ROUNDS = 4;
/** Legs that change by less than this are settled [mm]; far below a tape. */
const SETTLED = 1e-6;

/**
 * Turning a bend takes tube from its leg or gives it back, so that what is cut off a foot is measured on the frame as it
 * is bent again.
 */
function withLegs(source: CorrectionWork, shop: RebendShop): { work: CorrectionWork; rebending: Rebending } {
  let work = source;
  let turns: readonly BendTurn[] = [];
  for (let round = 1; ; round += 1) {
    const rebending = solveRebend(work.actual, work.targets, work.wanted, shop, turns);
    turns = rebending.turns;
    const bent = rebentFrame(work.uncut, rebending.turns, shop.fromFinish);
    const next = work.cutBackBy(footExcesses(work.wanted, bent));
    const isSettled =
      next.excesses.length === work.excesses.length &&
      next.excesses.every(({ excess }, index) => Math.abs(excess - (work.excesses[index]?.excess ?? 0)) < SETTLED);
    if (isSettled || round === ROUNDS) return { work, rebending };
    work = next;
  }
}

type WhyNot = 'rebend-ring-closed' | 'rebend-no-bends' | 'rebend-not-needed';

/** Why there is no such way. */
function whyNot(actual: FrameGeometry, { turns: arcs, limited }: Rebending, turns: readonly BendTurn[]): WhyNot | null {
  if (arcs.length === 0)
    return actual.members.some(
      ({ closed, centreline }) => closed && centreline.pieces.some(({ kind }) => kind === 'arc'),
    )
      ? 'rebend-ring-closed'
      : 'rebend-no-bends';
  return turns.length > 0 || limited.length > 0 ? (turns.length > 0 ? null : 'rebend-no-bends') : 'rebend-not-needed';
}

/** The outcome where one bend that is turned ends its scatter off, one after the other. */
const scattered = (
  work: CorrectionWork,
  turns: readonly BendTurn[],
  { machine }: RebendShop,
  correctedBy: (asked: readonly BendTurn[]) => (context: JudgeContext) => ReturnType<typeof asCorrected>,
): Outcome[] => {
  const off = machine.angleScatter * RADIANS;
  return turns.map((one) => {
    const missed = turns.map((turn) => (turn === one ? { ...turn, turn: turn.turn + off } : turn));
    return judge(work, correctedBy(missed)(work));
  });
};

/** Welded ends of the members that are fitted again, on the frame as it came back. */
const refittedWelds = (actual: FrameGeometry, { refitted }: RelaidFrame): WeldPlace[] =>
  saddleWelds(actual.members.filter(({ name }) => refitted.some(({ member }) => member === name)));

/** A tube between two seats that have moved apart is too short now: it is cut anew, as a member of a new frame is. */
const newTube = (actual: FrameGeometry, { members, refitted }: RelaidFrame, cutLengthOn: CutLengthOn): EffortPiece[] =>
  refitted.flatMap(({ member: of }): EffortPiece[] => {
    const [was, now] = [actual.members, members].map((all) => all.find((member) => member.name === of));
    if (was === undefined || now === undefined || now.centreline.length <= was.centreline.length + LONGER) return [];
    return [{ kind: 'member', of, part: 1, parts: 1, length: cutLengthOn(now, members) }];
  });

/** A saddle that is cut and dressed again loses nothing that a weld of this width does not fill [mm]: common practice. */
const LONGER = 1;

function rebendSteps(
  actual: FrameGeometry,
  turns: readonly BendTurn[],
  { refitted }: RelaidFrame,
  trims: readonly Step[],
): Step[] {
  const saddles = turns.length === 0 ? [] : refitted.map(({ member }) => ({ data: { member } }));
  const bends = turns.map(({ member, made, bend, piece, turn }): Step => {
    const arc = actual.members.find(({ name }) => name === member)?.centreline.pieces[piece];
    if (made === 'die' || arc?.kind !== 'arc')
      return {
        key: turn > 0 ? 'rebend' : 'rebend-open',
        data: { member, bend, value: Math.abs(turn) * DEGREES },
      };
    return { key: 're-roll', data: { member, bend, value: arc.length / (arc.angle + turn) } };
  });
  return [
    ...saddles.map((step) => ({ key: 'cut-saddles', ...step })),
    ...bends,
    ...trims,
    ...saddles.map((step) => ({ key: 'refit-saddles', ...step })),
    { key: 'check-sizes' },
  ];
}
