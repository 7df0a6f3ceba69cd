import type { Job } from '../../../job/job.ts';
import type { Alternative, CorrectionPlan, WayKey } from '../../../plan/correction.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { SetUp } from '../../bending/set-up.ts';
import { finding } from '../../finding.ts';
import { length } from '../../geometry/vector.ts';
import { moved, UNMOVED } from '../../geometry/rigid-motion.ts';
import { subtract } from '../../geometry/vector.ts';
import { commonPlane, judge, type Effort } from '../outcome.ts';
import { trimsOf } from '../trims.ts';
import type { CorrectionWork } from '../correction-work.ts';
import { rebendRows } from '../rebend-rows.ts';
import type { BendTurn } from '../rebend.ts';
import { MOST_OPENING, turnLimits } from '../turn-limits.ts';
import type { Candidate } from './candidate.ts';
import { ownSplice } from './own-splice.ts';
import { searchSplices, type Ground, type SearchResult, type SpliceTask } from './search-splices.ts';
import { cutJoints } from './cut-joints.ts';
import { effortOf, spliceWay, type SpliceContext, type SplicedWay } from './splice-way.ts';
import { scatteredTurns, splicedAndRebent, type TurnedHinge } from './splice-rebend.ts';
import { splicedFrame } from './spliced-frame.ts';

/** What splices are sought with. */
export type SpliceInput = {
  readonly job: Job;
  readonly machine: SetUp;
  readonly work: CorrectionWork;
  readonly fromFinish: ReadonlySet<string>;
  /** Minutes that an effort on the frame as it came back takes; null while one stands open. */
  readonly minutesOf: (effort: Effort) => number | null;
};

export type SpliceWays = Pick<CorrectionPlan, 'alternatives' | 'search'> & {
  readonly ways: readonly SplicedWay[];
  readonly ground: Ground;
  /** What there is to say while a way is shown: of that way, and why there is no splice where there is none. */
  readonly findings: (shown: WayKey | null) => Finding[];
};

/** Other places for the joints that are shown; our own choice. */
const MOST_ALTERNATIVES = 8;

const DEGREES = 180 / Math.PI;

/** The splices: best by each measure, with one's own joints, and with bends turned as well. */
export function spliceWays(source: SpliceInput): SpliceWays {
  const { job, work, machine } = source;
  const { closing, tube, print } = job;
  const task: SpliceTask = {
    frame: work.actual,
    targets: work.targets,
    posts: work.posts,
    planeNormal: commonPlane(work.wanted, work.actual),
    closing,
    sizes: {
      outsideDiameter: tube.outsideDiameter,
      kerf: closing.kerf,
      gap: closing.gap,
      shrinkage: closing.shrinkage,
      tape: work.tape,
    },
    wall: tube.wall,
  };
  const found = searchSplices(task);
  const { ground } = found;
  const context: SpliceContext = {
    work,
    ground,
    closing,
    faces: {
      tube,
      tape: work.tape,
      paperThickness: closing.paperThickness,
      templateStations: print.templateStations,
      templates: false,
    },
  };
  const ways = found.best.map(({ key, candidate }) =>
    spliceWay(key, candidate, context, [...tight(candidate, ground), ...manyPieces(candidate)]),
  );
  const general: Finding[] = [];
  if (closing.joints.length > 0) {
    const own = ownSplice(closing.joints, ground, task);
    if (own.candidate === null) general.push(...own.findings);
    else ways.push(spliceWay('splice-own', own.candidate, context, [...own.findings, ...manyPieces(own.candidate)]));
  }
  const [best] = found.best;
  const limits = turnLimits(work.actual, { machine, fromFinish: source.fromFinish });
  const rebent =
    best === undefined
      ? undefined
      : splicedAndRebent(best.candidate, ground, task, (_, member, piece) =>
          limits.find(
            ({ arc }) => arc.member === work.actual.members[member]?.name && arc.piece === piece && arc.made === 'die',
          ),
        );
  if (rebent !== undefined) {
    const { candidate, turned } = rebent;
    const told = [...tight(candidate, ground), ...manyPieces(candidate), ...opened(turned, source)];
    const scattered = scatteredTurns(candidate.splice, (machine.angleScatter * Math.PI) / 180).map((one) =>
      judge(work, splicedFrame(one, work.actual, ground.graph)),
    );
    const spliced = spliceWay('splice-rebend', candidate, context, told, [
      { from: 'angle-scatter', outcomes: scattered },
    ]);
    ways.push(withBends(spliced, turned, source));
  }
  return {
    ways,
    ground,
    alternatives: alternativesOf(found, source),
    search: { layouts: found.layouts, workedOut: found.workedOut, complete: found.complete },
    findings: (shown) => [
      ...general,
      ...(ways.find(({ way }) => way.key === shown)?.findings ?? []),
      ...whyNone(found, ground, source),
    ],
  };
}

/** Joints that have less room beside bends and welds than usual. */
const tight = ({ splice }: Candidate, { graph }: Ground): Finding[] =>
  splice.joints.flatMap(({ joint }, index) => {
    const { stretch } = joint.place;
    const member = graph.members[stretch.member]?.name ?? '';
    return stretch.tight
      ? [finding('cut-beside-bend', 'caution', '/closing/barred', { joint: index + 1, member })]
      : [];
  });

/** A frame that lies in more loose pieces than this at once is hard to hold in shape: common practice, no source. */
const MOST_PIECES = 4;

const manyPieces = ({ splice }: Candidate): Finding[] => {
  const value = splice.problem.layout.bodies.count;
  return value > MOST_PIECES
    ? [finding('cut-in-many-pieces', 'caution', '/closing/joints', { value, high: MOST_PIECES })]
    : [];
};

/** A bend that is turned, as rows and steps name it. */
function turnsOf(turned: readonly TurnedHinge[], { work }: SpliceInput): BendTurn[] {
  return turned.flatMap(({ hinge, turn }) => {
    const member = work.actual.members[hinge.member];
    if (member === undefined) return [];
    const bend = member.centreline.pieces
      .slice(0, hinge.piece + 1)
      .filter((piece) => piece.kind === 'arc' && piece.made === 'die').length;
    return [{ member: member.name, piece: hinge.piece, made: 'die' as const, bend, turn }];
  });
}

/** Bends that are opened: hardened tube wrinkles there. */
const opened = (turned: readonly TurnedHinge[], source: SpliceInput): Finding[] =>
  turnsOf(turned, source).flatMap(({ member, bend, turn }) =>
    turn < 0
      ? [
          finding('rebend-opens-bend', 'caution', '/closing/way', {
            member,
            bend,
            value: -turn * DEGREES,
            high: MOST_OPENING * DEGREES,
          }),
        ]
      : [],
  );

/** A splice with its bends: rows, the bender's steps, and that the frame goes away for it. */
function withBends(spliced: SplicedWay, turned: readonly TurnedHinge[], source: SpliceInput): SplicedWay {
  const { work, machine } = source;
  const turns = turnsOf(turned, source);
  const { way } = spliced;
  const close = way.steps.findIndex(({ key }) => key === 'close-and-tack');
  const bends = turns.map(({ member, bend, turn }) => ({
    key: turn > 0 ? 'rebend' : 'rebend-open',
    joint: 0,
    data: { member, bend, value: Math.abs(turn) * DEGREES },
  }));
  return {
    ...spliced,
    way: {
      ...way,
      rebends: rebendRows(work.actual, turns, machine),
      steps: [...way.steps.slice(0, close), ...bends, ...way.steps.slice(close)],
      effort: { ...way.effort, bends: way.effort.bends + turns.length },
    },
  };
}

/** Where else the joints could stand, apart from what the ways show already. */
function alternativesOf({ candidates, best, ground }: SearchResult, { work, minutesOf }: SpliceInput): Alternative[] {
  const shown = new Set(best.map(({ candidate }) => candidate));
  const trims = trimsOf(work.excesses, work.tape);
  return candidates
    .filter((candidate) => !shown.has(candidate))
    .slice(0, MOST_ALTERNATIVES)
    .map((one) => ({
      joints: one.splice.joints.map(({ joint, middle }) => ({
        member: ground.graph.members[joint.place.stretch.member]?.name ?? '',
        station: middle,
        on: joint.place.stretch.on,
      })),
      fixingMisfit: one.fixingMisfit,
      cornerMisfit: one.cornerMisfit,
      largestKink: one.largestKink * DEGREES,
      largestHiLo: one.largestHiLo,
      welds: one.welds,
      minutes: minutesOf(effortOf(cutJoints(one.splice, work.actual, UNMOVED), trims)),
    }));
}

/** Why no splice is to be had, or none brings every point where it must be. */
function whyNone(found: SearchResult, ground: Ground, { work }: SpliceInput): Finding[] {
  const [best] = [...found.candidates].sort((a, b) => a.outOfTolerance - b.outOfTolerance);
  if (best === undefined) {
    const code = ground.stretches.length === 0 ? 'cut-no-place' : 'cut-holds-together';
    return [finding(code, 'note', '/closing/cutMembers')];
  }
  if (best.outOfTolerance <= 1) return [];
  const { problem, motions } = best.splice;
  let worst = { name: '', field: '', off: 0, share: 0, at: { x: 0, y: 0, z: 0 } };
  for (const { body, point, wanted, target } of problem.targets) {
    const motion = motions[body];
    if (motion === undefined || target.kind === 'guide') continue;
    const at = moved(motion, point);
    const off = length(subtract(at, wanted));
    const share = off / target.tolerance;
    const name = target.name === '' ? target.spot.member : target.name;
    if (share > worst.share) worst = { name, field: target.field, off, share, at };
  }
  const data = { name: worst.name, value: worst.off, high: worst.off / worst.share, ...worst.at };
  const field = worst.field === '' ? '/closing/cutMembers' : worst.field;
  return work.targets.length === 0 ? [] : [finding('target-out-of-reach', 'note', field, data)];
}
