import fc from 'fast-check';
import type { Frame, Member, RunPoint } from '../../server/job/frame.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import { rotate, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { between, jobWith, plannedFrame, type JobChange } from './plans-compared.ts';

const DEGREE = Math.PI / 180;

export type Turn = { length: number; angle: number; roll: number; radius: number | null };

/** Long straights and bends of any plane, so that every one of them can be bent. */
export const turn = fc.record({
  length: between(500, 1200),
  angle: between(5, 130),
  roll: between(-180, 180),
  radius: fc.option(between(70, 150), { nil: null }),
});
export const turns = fc.array(turn, { minLength: 1, maxLength: 5 });

/** The corners of a run that is laid turn by turn, with the directions of its straights and the axes of its bends. */
export function walked(of: readonly Turn[]): { points: RunPoint[]; normal: Vector3 } {
  let point: Vector3 = { x: 0, y: 0, z: 0 };
  let direction: Vector3 = { x: 1, y: 0, z: 0 };
  let axis: Vector3 = { x: 0, y: 0, z: 1 };
  let normal = axis;
  const points: RunPoint[] = [{ ...point, radius: null }];
  const on = (long: number) => {
    const { x, y, z } = point;
    point = { x: x + long * direction.x, y: y + long * direction.y, z: z + long * direction.z };
  };
  for (const [index, { length, angle, roll, radius }] of of.entries()) {
    on(length);
    points.push({ ...point, radius });
    axis = rotate(axis, direction, roll * DEGREE);
    if (index === 0) normal = axis;
    direction = rotate(direction, axis, angle * DEGREE);
  }
  on(700);
  points.push({ ...point, radius: null });
  return { points, normal };
}

export const runOf = (points: readonly RunPoint[]): Frame => ({ shape: 'run', points: [...points] });
/** Nothing to hold: a grip that the first straight is too short for would be added at the datum end alone. */
export const BENCH: JobChange = { machine: { leastStraight: 0 }, die: { gripLength: 0, largestAngle: 360 } };
export const planned = (frame: Frame): MemberPlan => plannedFrame(jobWith(frame, BENCH)).members[0]!;

/** What a bender sets: straight, turn of the tube, bend, radius; and the last straight [mm, degrees]. */
export const table = (member: MemberPlan) => ({
  steps: member.bends.map(({ feed, rotation, angle, dieRadius, arcLength }) => ({
    feed: feed.value,
    rotation: rotation.value,
    angle: angle.value,
    dieRadius: dieRadius.value,
    arcLength: arcLength.value,
  })),
  lastStraight: member.lastStraight.value,
  cutLength: member.cutLength.value,
});

/** Rotations of a half turn may come out with either sign. */
export const halfTurn = ({ steps }: ReturnType<typeof table>) =>
  steps.some(({ rotation }) => Math.abs(rotation) > 179.999);

/** A frame of one member with free ends. */
export const memberOf = (path: Member['path']): Frame => ({
  shape: 'members',
  members: [{ name: 'tube', path, start: { end: 'free' }, finish: { end: 'free' } }],
});
