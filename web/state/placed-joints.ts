import type { PlacedJoint } from '../../server/job/closing.ts';
import type { Job, Units } from '../../server/job/job.ts';
import { INCH } from '../../server/language/length-format.ts';
import type { CorrectionPlan } from '../../server/plan/correction.ts';
import { withChoice } from './typed-text.ts';

/** Somebody's joint among those of its member: a joint keeps its place in the order when its number changes. */
export type JointOfMember = { readonly member: string; readonly rank: number };

/** The joints of the way that is shown, as places on their members. */
const shownJoints = (correction: CorrectionPlan): readonly PlacedJoint[] => {
  const way = correction.ways.find(({ key }) => key === correction.chosen);
  return (way?.joints ?? []).map(({ member, place }) => ({ member, station: place }));
};

/**
 * The joints to go on from when one is moved: those put down by hand where they are shown, or are about to be; else
 * those of the way that is shown.
 */
export function jointsToMove(job: Job, correction: CorrectionPlan, working: boolean): readonly PlacedJoint[] {
  const byHand = correction.chosen === 'splice-own' || (job.closing.way === 'splice-own' && working);
  return byHand && job.closing.joints.length > 0 ? job.closing.joints : shownJoints(correction);
}

/** Each joint's rank on its member, counted along it, from their places in any order. */
export function ranksOf(joints: readonly PlacedJoint[]): readonly JointOfMember[] {
  return joints.map(({ member, station }, index) => ({
    member,
    rank: joints.filter(
      (other, at) => other.member === member && (other.station < station || (other.station === station && at < index)),
    ).length,
  }));
}

/** Which of the joints is the one of that rank on that member; −1 where there is none. */
export const indexOfJoint = (joints: readonly PlacedJoint[], one: JointOfMember): number =>
  ranksOf(joints).findIndex(({ member, rank }) => member === one.member && rank === one.rank);

/** The job with these joints as one's own, and the way that closes them chosen. */
export function withOwnJoints(job: Job, joints: readonly PlacedJoint[]): Job {
  const placed = joints.map(({ member, station }) => ({ member, station }));
  return withChoice(withChoice(job, '/closing/joints', placed), '/closing/way', 'splice-own');
}

/** The job with one of the joints at another place; all the others go along as one's own. */
export const withJointAt = (job: Job, joints: readonly PlacedJoint[], index: number, station: number): Job =>
  withOwnJoints(
    job,
    joints.map((joint, at) => (at === index ? { member: joint.member, station } : joint)),
  );

/** A joint to begin with: half way along the longest stretch where one may stand and none does; null where there is none. */
export function freshJoint(correction: CorrectionPlan, joints: readonly PlacedJoint[]): PlacedJoint | null {
  const open = correction.members.flatMap(({ name, free }) =>
    free
      .filter(({ from, to }) => !joints.some((one) => one.member === name && one.station >= from && one.station <= to))
      .map(({ from, to }) => ({ member: name, station: (from + to) / 2, length: to - from })),
  );
  const [first, ...rest] = open;
  if (first === undefined) return null;
  const { member, station } = rest.reduce((best, one) => (one.length > best.length ? one : best), first);
  return { member, station };
}

/** The job without joints of one's own: the plan finds their places, and shows what it recommends. */
export function withoutOwnJoints(job: Job): Job {
  const cleared = withChoice(job, '/closing/joints', []);
  return job.closing.way === 'splice-own' ? withChoice(cleared, '/closing/way', null) : cleared;
}

/** A place that a finger has found, to the whole millimetre or the finest fraction of an inch of the job. */
export function roundedPlace(station: number, units: Units): number {
  const step = stepOf(units, 1);
  return Math.round(station / step) * step;
}

/** A range as it is told: rounded inwards, so that its ends as they are read may be typed. */
export function toldRange({ from, to }: { from: number; to: number }, units: Units): { from: number; to: number } {
  const step = stepOf(units, 0.1);
  // what stands on a step already stays there, whatever the last binary digit says
  const [first, last] = [Math.ceil(from / step - 1e-6) * step, Math.floor(to / step + 1e-6) * step];
  return first <= last ? { from: first, to: last } : { from, to };
}

const stepOf = (units: Units, millimetres: number): number =>
  units.length === 'mm' ? millimetres : INCH / units.fraction;
