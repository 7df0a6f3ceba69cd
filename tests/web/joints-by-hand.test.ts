import { describe, expect, it } from 'vitest';
import type { PlacedJoint } from '../../server/job/closing.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { Job as JobSchema } from '../../server/job/job.ts';
import { problemsOf } from '../../server/job/validate.ts';
import type { CorrectionPlan, Way } from '../../server/plan/correction.ts';
import type { View, ViewMark } from '../../server/plan/view.ts';
import { JobHistory } from '../../web/state/job-history.svelte.ts';
import { JointDrag, type Grip } from '../../web/state/joint-drag.svelte.ts';
import { handlesOf } from '../../web/state/joint-handles.ts';
import {
  freshJoint,
  indexOfJoint,
  jointsToMove,
  ranksOf,
  withJointAt,
  withOwnJoints,
  withoutOwnJoints,
} from '../../web/state/placed-joints.ts';
import { makePlan } from '../sheets/fixture.ts';

const job = newJob('hoop');
function correctionOf(): CorrectionPlan {
  const { correction } = makePlan();
  if (correction === null) throw new Error('The made-up plan has no correction.');
  return correction;
}
const correction = correctionOf();
const chosen = correction.ways.find(({ key }) => key === correction.chosen) as Way;
const shown = chosen.joints.map(({ member, place }) => ({ member, station: place }));

describe('joints put down by hand', () => {
  it('start as those of the way that is shown', () => {
    expect(jointsToMove(job, correction, false)).toEqual(shown);
    expect(shown.length).toBeGreaterThan(1);
  });

  it('are gone on from as soon as they are chosen, before the plan has them', () => {
    const own = withJointAt(job, shown, 0, 777);
    expect(jointsToMove(own, correction, true)).toBe(own.closing.joints);
    // a plan that is ready and shows another way shows other joints: those are what a finger takes hold of
    expect(jointsToMove(own, correction, false)).toEqual(shown);
    expect(jointsToMove(own, { ...correction, chosen: 'splice-own' }, false)).toBe(own.closing.joints);
    expect(jointsToMove(job, { ...correction, chosen: 'new-frame' }, false)).toEqual([]);
  });

  it('take all the others along, choose their way, and drop the texts that no longer hold', () => {
    const typed: Job = { ...job, asTyped: { '/closing/joints/0/station': '3 in', '/closing/kerf': '2' } };
    const moved = withJointAt(typed, shown, 1, 500);
    expect(moved.closing.joints).toEqual([shown[0], { member: shown[1]?.member, station: 500 }]);
    expect(moved.closing.way).toBe('splice-own');
    expect(moved.asTyped).toEqual({ '/closing/kerf': '2' });
    expect(problemsOf(JobSchema, moved)).toEqual([]);
  });

  it('hold nothing but their places', () => {
    const fat = shown.map((one) => ({ ...one, on: 'straight' }));
    expect(withOwnJoints(job, fat).closing.joints).toEqual(shown);
  });

  it('are put back to the plan’s own', () => {
    expect(withoutOwnJoints(withOwnJoints(job, shown)).closing).toEqual(job.closing);
    const other = { ...withOwnJoints(job, shown), closing: { ...job.closing, joints: shown, way: 'rebend' as const } };
    expect(withoutOwnJoints(other).closing).toEqual({ ...job.closing, way: 'rebend' });
  });

  it('are told apart by their order along each member, whatever order they are kept in', () => {
    const joints: PlacedJoint[] = [
      { member: 'hoop', station: 900 },
      { member: 'bar', station: 40 },
      { member: 'hoop', station: 300 },
      { member: 'hoop', station: 900 },
    ];
    expect(ranksOf(joints).map(({ rank }) => rank)).toEqual([1, 0, 0, 2]);
    expect(indexOfJoint(joints, { member: 'hoop', rank: 0 })).toBe(2);
    expect(indexOfJoint(joints, { member: 'hoop', rank: 2 })).toBe(3);
    expect(indexOfJoint(joints, { member: 'bar', rank: 1 })).toBe(-1);
  });

  it('begin half way along the longest stretch that is free', () => {
    const [first, ...rest] = correction.members;
    if (first === undefined) throw new Error('The made-up plan has no members.');
    const free = [
      { from: 0, to: 400, startRule: 'end' as const, endRule: 'bend' as const },
      { from: 700, to: 1000, startRule: 'bend' as const, endRule: 'bend' as const },
    ];
    const one = { ...correction, members: [{ ...first, free }, ...rest.map((member) => ({ ...member, free: [] }))] };
    expect(freshJoint(one, [])).toEqual({ member: first.name, station: 200 });
    expect(freshJoint(one, [{ member: first.name, station: 10 }])).toEqual({ member: first.name, station: 850 });
    expect(freshJoint({ ...one, members: [] }, [])).toBeNull();
  });
});

describe('a joint on the drawing', () => {
  const mark = (label: string): ViewMark => ({ kind: 'joint', label, layer: 'corrected', at: [0, 0], towards: [0, 1] });
  const view: View = {
    key: 'face',
    right: { x: 1, y: 0, z: 0 },
    up: { x: 0, y: 1, z: 0 },
    bounds: [0, 0, 2000, 10],
    layers: [
      {
        role: 'came-back',
        members: [
          {
            member: 'hoop',
            edges: [],
            centreline: [
              [0, 0],
              [2000, 0],
            ],
            stations: [0, 2000],
          },
        ],
      },
    ],
    dimensions: [],
    marks: [mark('1'), mark('2'), { ...mark('1'), kind: 'feed' }],
    gas: [],
  };

  it('can be taken hold of where its tube is drawn as it came back', () => {
    expect(handlesOf(view, correction).map(({ key, mark: { label } }) => [key, label])).toEqual([['hoop/0', '1']]);
    expect(handlesOf({ ...view, layers: [] }, correction)).toEqual([]);
    expect(handlesOf(view, { ...correction, chosen: 'new-frame' })).toEqual([]);
  });

  function held(): { history: JobHistory; drag: JointDrag; grip: Grip } {
    const history = new JobHistory(job, () => undefined);
    const drag = new JointDrag({ history });
    const line = {
      points: [[0, 0] as const, [2000, 0] as const].map(([x, y]) => [x, y] as [number, number]),
      stations: [0, 2000],
    };
    const joints = [
      { member: 'hoop', station: 1000 },
      { member: 'hoop', station: 1500 },
    ];
    const stretches = [{ from: 900, to: 1100 }];
    return { history, drag, grip: { joint: { member: 'hoop', rank: 0 }, joints, index: 0, line, stretches } };
  }

  it('does not jump to the finger, follows it to whole millimetres, and stays where it may stand', () => {
    const { history, drag, grip } = held();
    drag.take(grip, [990, 5]);
    drag.move([990, 40]);
    expect([drag.moved, history.canUndo]).toEqual([false, false]);
    drag.move([1010.3, -9]);
    expect(history.job.closing.joints[0]?.station).toBe(1020);
    drag.move([5000, 0]);
    expect(history.job.closing.joints).toEqual([{ member: 'hoop', station: 1100 }, grip.joints[1]]);
    drag.move([0, 0]);
    expect(history.job.closing.joints[0]?.station).toBe(900);
  });

  it('is one undo a drag, and lets go', () => {
    const { history, drag, grip } = held();
    drag.take(grip, [1000, 0]);
    for (const x of [1010, 1020, 1030]) drag.move([x, 0]);
    drag.end();
    drag.move([1090, 0]);
    expect(history.job.closing.joints[0]?.station).toBe(1030);
    drag.take({ ...grip, joints: history.job.closing.joints }, [1030, 0]);
    drag.move([1040, 0]);
    drag.end();
    history.undo();
    expect(history.job.closing.joints[0]?.station).toBe(1030);
    history.undo();
    expect(history.job).toBe(job);
    expect(history.canUndo).toBe(false);
  });

  it('goes back where it was when the drag is given up', () => {
    const { history, drag, grip } = held();
    drag.giveUp();
    drag.take(grip, [1000, 0]);
    drag.giveUp();
    expect(history.job).toBe(job);
    drag.take(grip, [1000, 0]);
    for (const x of [1010, 1020]) drag.move([x, 0]);
    drag.giveUp();
    drag.move([1050, 0]);
    expect([history.job, history.canUndo]).toEqual([job, false]);
  });

  it('moves by keys, which are one undo until it is left', () => {
    const { history, drag, grip } = held();
    drag.step(grip, 1);
    drag.step({ ...grip, joints: history.job.closing.joints }, 10);
    expect(history.job.closing.joints[0]?.station).toBe(1011);
    history.undo();
    expect(history.job).toBe(job);
    drag.step({ ...grip, joints: [{ member: 'hoop', station: 1100 }] }, 1);
    expect(history.job).toBe(job);
  });
});
