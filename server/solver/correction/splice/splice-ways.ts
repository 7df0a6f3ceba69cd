import { DEGREES } from '../../geometry/angle.ts';
import type { BentFrom } from '../../bent-frame.ts';
import type { Alternative, CorrectionPlan, WayKey } from '../../../plan/correction.ts';
import type { Finding } from '../../../plan/finding.ts';
import { leftOnArc } from '../../bending/left-on.ts';
import type { SetUp } from '../../bending/set-up.ts';
import { finding } from '../../finding.ts';
import { length } from '../../geometry/vector.ts';
import { moved, UNMOVED } from '../../geometry/rigid-motion.ts';
import { subtract } from '../../geometry/vector.ts';
import { commonPlane, judge, type Effort } from '../outcome.ts';
import { trimsOf } from '../trims.ts';
import type { Post } from '../corrected.ts';
import type { CorrectionWork } from '../correction-work.ts';
import { turnLimits } from '../turn-limits.ts';
import type { Candidate } from './candidate.ts';
import { ownSplice } from './own-splice.ts';
import { searchSplices, type Ground, type SearchResult, type SpliceTask } from './search-splices.ts';
import { cutJoints } from './cut-joints.ts';
import { planJoints } from '../joint-plan.ts';
import { effortOf, spliceWay, type SpliceContext, type SplicedWay } from './splice-way.ts';
import { opened, withBends } from './splice-bends.ts';
import { scatteredTurns, splicedAndRebent } from './splice-rebend.ts';
import { splicedFrame } from './spliced-frame.ts';

/** What splices are sought with. */
export type SpliceInput = {
  readonly job: Pick<BentFrom, 'closing' | 'tube' | 'print' | 'quality'>;
  readonly machine: SetUp;
  readonly work: CorrectionWork;
  /** Posts that the search keeps clear of; those of the work that are out of reach are left out. */
  readonly posts: readonly Post[];
  readonly fromFinish: ReadonlySet<string>;
};

/** Minutes that an effort on the frame as it came back takes; null while one stands open. */
type MinutesOf = (effort: Effort) => number | null;

export type SpliceWays = Pick<CorrectionPlan, 'search'> & {
  readonly alternatives: (minutesOf: MinutesOf) => Alternative[];
  readonly ways: readonly SplicedWay[];
  readonly ground: Ground;
  /** What there is to say while a way is shown: of that way, and why there is no splice where there is none. */
  readonly findings: (shown: WayKey | null) => Finding[];
};

/** Other places for the joints that are shown; our own choice. */
const MOST_ALTERNATIVES = 8;

/** The splices: best by each measure, with one's own joints, and with bends turned as well. */
export function spliceWays(source: SpliceInput): SpliceWays {
  const { job, work, machine } = source;
  const { closing, tube, print } = job;
  const task: SpliceTask = {
    frame: work.actual,
    targets: work.targets,
    posts: source.posts,
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
      quality: job.quality,
      leftOn: { die: leftOnArc('die', machine), rolled: leftOnArc('rolled', machine) },
    },
  };
  const ways = found.best.map(({ key, candidate }) =>
    spliceWay(key, candidate, context, [...tight(candidate, ground), ...manyPieces(candidate)]),
  );
  const general: Finding[] = unknownMembers(closing, ground);
  if (closing.joints.length > 0) {
    const own = ownSplice(closing.joints, ground, task);
    // what is wrong with joints put down by hand is told whatever way is shown
    general.push(...own.findings);
    if (own.candidate !== null) {
      const stopped = own.findings.filter(({ grade }) => grade === 'stop');
      const spliced = spliceWay('splice-own', own.candidate, context, [...stopped, ...manyPieces(own.candidate)]);
      ways.push({ ...spliced, findings: spliced.findings.filter((one) => !stopped.includes(one)) });
    }
  }
  const [best] = found.best;
  const limits = turnLimits(work.actual, { machine, fromFinish: source.fromFinish });
  const rebent =
    best === undefined
      ? undefined
      : splicedAndRebent(best.candidate, ground, task, {
          limits: (_, member, piece) =>
            limits.find(
              ({ arc }) =>
                arc.member === work.actual.members[member]?.name && arc.piece === piece && arc.made === 'die',
            ),
          least: machine.angleScatter / DEGREES,
        });
  if (rebent !== undefined) {
    const { candidate, turned } = rebent;
    const told = [...tight(candidate, ground), ...manyPieces(candidate), ...opened(turned, source)];
    const scattered = scatteredTurns(candidate.splice, machine.angleScatter / DEGREES).map((one) =>
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
    alternatives: (minutesOf) => alternativesOf(found, context, minutesOf),
    search: { layouts: found.layouts, workedOut: found.workedOut, complete: found.complete },
    findings: (shown) => [
      ...general,
      ...(ways.find(({ way }) => way.key === shown)?.findings ?? []),
      ...whyNone(found, ground, source),
    ],
  };
}

/** Members that may be cut, or have a stretch that must not be, and that the frame does not have. */
function unknownMembers({ cutMembers, barred }: BentFrom['closing'], { memberIndex }: Ground): Finding[] {
  const named = [
    ...cutMembers.map((member, index) => ({ member, field: `/closing/cutMembers/${String(index)}` })),
    ...barred.map(({ member }, index) => ({ member, field: `/closing/barred/${String(index)}/member` })),
  ];
  return named.flatMap(({ member, field }) =>
    memberIndex.has(member) ? [] : [finding('cut-member-missing', 'caution', field, { member })],
  );
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

/** Where else the joints could stand, apart from what the ways show already. */
function alternativesOf(
  { candidates, best, ground }: SearchResult,
  { work, closing, faces }: SpliceContext,
  minutesOf: MinutesOf,
): Alternative[] {
  const shown = new Set(best.map(({ candidate }) => candidate));
  const trims = trimsOf(work.excesses, work.tape);
  return candidates
    .filter((candidate) => !shown.has(candidate))
    .slice(0, MOST_ALTERNATIVES)
    .map((one) => {
      const cuts = cutJoints(one.splice, work.actual, UNMOVED);
      const planned = planJoints(cuts, work.actual, closing, faces);
      return {
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
        minutes: minutesOf(effortOf(cuts, planned.joints, trims)),
      };
    });
}

/** Why no splice is to be had, or none brings every point where it must be. */
function whyNone(found: SearchResult, ground: Ground, { work }: SpliceInput): Finding[] {
  const [best] = [...found.candidates].sort((a, b) => a.outOfTolerance - b.outOfTolerance);
  if (best === undefined) {
    const code = ground.stretches.length === 0 ? 'cut-no-place' : 'cut-holds-together';
    return [finding(code, 'note', '/closing/cutMembers')];
  }
  const nothing =
    found.best.length === 0
      ? [finding('splice-gains-nothing', 'note', '/closing/cutMembers', { value: found.uncut.worst })]
      : [];
  if (best.outOfTolerance <= 1) return nothing;
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
  return work.targets.length === 0 ? nothing : [...nothing, finding('target-out-of-reach', 'note', field, data)];
}
