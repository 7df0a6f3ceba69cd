import { newJob } from '../../server/job/default-job.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { CorrectedFrame } from '../../server/solver/correction/corrected.ts';
import { correctionWork, type CorrectionWork } from '../../server/solver/correction/correction-work.ts';
import { judge, type WayDraft } from '../../server/solver/correction/outcome.ts';
import { searchSplices, type SpliceTask } from '../../server/solver/correction/splice/search-splices.ts';
import { splicedAndRebent } from '../../server/solver/correction/splice/splice-rebend.ts';
import { spliceWay } from '../../server/solver/correction/splice/splice-way.ts';
import { splicedFrame } from '../../server/solver/correction/splice/spliced-frame.ts';
import type { RigidMotion } from '../../server/solver/geometry/rigid-motion.ts';
import { sidesOf } from '../../server/solver/joints/outside.ts';
import type { MadeUpFrame } from './fit-up-frames.ts';
import { weldsOfJoint, type Weld } from './fit-up-joint.ts';
import { TUBE } from './fit-up-shapes.ts';

/** Root opening, and what a weld pulls in [mm]. */
export type Closes = { readonly gap: number; readonly shrinkage: number };

/** A splice as the plan has it: its joints, how its bodies move, and how the whole is laid on the wanted frame. */
export type PlannedSplice = {
  readonly work: CorrectionWork;
  readonly way: WayDraft;
  readonly corrected: CorrectedFrame;
  readonly lay: RigidMotion;
};

/** How the tape was read, and what the whole frame may miss by, ± [mm]. */
const TAPE = 1;
const TOLERANCE = 3;

/** How far a bend may be opened and closed where bends are turned as well [rad]. */
const TURN = 0.05;

/** The best splices of a frame by each measure, and the best of all with its bends turned as well. */
export function splicesOf({ wanted, actual }: MadeUpFrame, closes: Closes): PlannedSplice[] {
  const { outsideDiameter, wall } = TUBE;
  const { work } = correctionWork({
    fixing: [],
    posts: [],
    wanted,
    returned: { geometry: actual, variations: [] },
    outsideDiameter,
    tape: TAPE,
    tolerance: TOLERANCE,
  });
  const job = newJob('hoop');
  const closing = { ...job.closing, gap: closes.gap, shrinkage: closes.shrinkage };
  const task: SpliceTask = {
    frame: work.actual,
    targets: work.targets,
    planeNormal: work.actual.planeNormal === null ? null : wanted.planeNormal,
    closing,
    sizes: { outsideDiameter, kerf: closing.kerf, ...closes, tape: TAPE },
    wall,
  };
  const { best, ground } = searchSplices(task);
  const faces = {
    tube: { ...job.tube, ...TUBE },
    tape: TAPE,
    paperThickness: closing.paperThickness,
    templateStations: job.print.templateStations,
    templates: false,
    quality: 'B' as const,
  };
  const [first] = best;
  const rebent =
    first === undefined
      ? undefined
      : splicedAndRebent(first.candidate, ground, task, { limits: () => ({ low: -TURN, high: TURN }), least: 0 });
  const all = [
    ...best,
    ...(rebent === undefined ? [] : [{ key: 'splice-rebend' as const, candidate: rebent.candidate }]),
  ];
  return all.map(({ key, candidate }): PlannedSplice => {
    const corrected = splicedFrame(candidate.splice, work.actual, ground.graph);
    const { way } = spliceWay(key, candidate, { work, ground, closing, faces });
    return { work, way, corrected, lay: judge(work, corrected).lay };
  });
}

/** Enough to stand on the body beside a face [mm]. */
const BESIDE = 1;

/** Cuts and closes one joint of a splice. */
export function weldsOf({ work, corrected }: PlannedSplice, joint: Joint, closes: Closes): Weld[] {
  const member = work.actual.members.find(({ name }) => name === joint.member)!;
  const [a, b] = [joint.faceA.station.value, joint.faceB.station.value];
  const motions = {
    before: corrected.motionAt(joint.member, Math.min(a, joint.place) - BESIDE),
    behind: corrected.motionAt(joint.member, Math.max(b, joint.place) + BESIDE),
  };
  return weldsOfJoint(joint, member, sidesOf(work.actual), motions, { tube: TUBE, ...closes });
}
