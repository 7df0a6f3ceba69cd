import { newJob } from '../../server/job/default-job.ts';
import type { Fixing, FixingPoint } from '../../server/job/fixing.ts';
import type { Job } from '../../server/job/job.ts';
import type { Finding } from '../../server/plan/finding.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { WeldingPlan } from '../../server/plan/welding.ts';
import type { EndGeometry, FrameGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { joint as cut, planned, rail } from './made-up-joints.ts';
import { centrelineFromChain, type Link } from '../../server/solver/geometry/centreline.ts';
import { squareTo, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { planWelding } from '../../server/solver/welding/plan-welding.ts';
import { settledShrinkage } from '../../server/solver/welding/shrinkage.ts';
import { weldSites, type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import { weldWork, type WeldWork } from '../../server/solver/welding/weld-work.ts';

const FREE: EndGeometry = { kind: 'free' };
export const line = (length: number): Link => ({ kind: 'straight', length });
export const arc = (radius: number, angle: number): Link => ({
  kind: 'arc',
  radius,
  angle,
  rotation: 0,
  made: 'die',
});

/** A member from the origin along a direction, x where none is told. */
export function tube(
  name: string,
  links: readonly Link[] = [line(3000)],
  { ends = {}, along = { x: 1, y: 0, z: 0 } }: { ends?: Partial<MemberGeometry>; along?: Vector3 } = {},
): MemberGeometry {
  const direction = unit(along)!;
  return {
    name,
    centreline: centrelineFromChain({ point: { x: 0, y: 0, z: 0 }, direction, normal: squareTo(direction) }, links),
    closed: false,
    closing: null,
    start: FREE,
    finish: FREE,
    ...ends,
  };
}

export const onto = (axisAngle = Math.PI / 2, offset = 0): EndGeometry => ({
  kind: 'saddle',
  onto: 'main',
  station: 1000,
  axisAngle,
  offset,
});

export const MAIN = tube('main');
export const BRANCH = tube('branch', [line(800)], { ends: { start: onto() }, along: { x: 0, y: 0, z: 1 } });

export const spliceAt = (station: number, joint = 1, member = 'main'): WeldPlace => ({
  kind: 'splice',
  joint,
  side: '',
  member,
  station,
});
export const SADDLE: WeldPlace = { kind: 'saddle', joint: 0, side: '', member: 'branch', station: 0 };

/** A pad with a plate at a place of a member. */
export const padAt = (
  spot: FixingPoint['at']['spot'],
  { hole = 0, member = 'main', thickness = 6 } = {},
): Fixing[number] => ({
  fixing: 'pad',
  name: `pad at ${spot}`,
  at: { member, spot, number: 1, distance: 0 },
  off: { x: 0, y: 0, z: 0 },
  lands: null,
  tolerance: null,
  plate: { thickness, hole },
});

export const frameOf = (members: readonly MemberGeometry[]): FrameGeometry => ({
  members,
  checks: [],
  feet: [],
  corners: [],
  planeNormal: null,
});

export type Work = {
  readonly members?: readonly MemberGeometry[];
  readonly places?: readonly WeldPlace[];
  readonly joints?: readonly Joint[];
};

/** The welds of a job on made-up members: a splice in the middle of a straight tube where nothing else is told. */
export function welded(
  typed: Job,
  { members = [MAIN], places = [spliceAt(1500)], joints = [] }: Work = {},
): { welding: WeldingPlan; findings: Finding[]; works: WeldWork[] } {
  const frame = frameOf(members);
  const job = { ...typed, closing: { ...typed.closing, shrinkage: settledShrinkage(typed) } };
  const { welding, tube: size, closing, fixing } = job;
  const works = weldWork(weldSites(places, frame, fixing), { welding, tube: size, gap: closing.gap, members });
  return { ...planWelding({ job, typed, welds: works, joints, frame, wanted: frame }), works };
}

/** A new job with a change of its tube, its closing and its welding. */
export function jobWith(change: {
  tube?: Partial<Job['tube']>;
  closing?: Partial<Job['closing']>;
  welding?: Partial<Job['welding']>;
  more?: Partial<Job>;
}): Job {
  const job = newJob('straight');
  return {
    ...job,
    tube: { ...job.tube, ...change.tube },
    closing: { ...job.closing, ...change.closing },
    welding: { ...job.welding, ...change.welding },
    ...change.more,
  };
}

/** The welding of a new job with some settings typed for one form. */
export const settings = (
  form: 'butt' | 'saddle' | 'pad',
  typed: Partial<Job['welding']['butt']>,
): Pick<Job['welding'], typeof form> => {
  const { welding } = newJob('straight');
  return { [form]: { ...welding[form], ...typed } } as Pick<Job['welding'], typeof form>;
};

/** A grade of the shop's own. */
export const ownGrade = {
  from: 'own' as const,
  name: 'X',
  density: 7800,
  elasticModulus: 200_000,
  strengthCoefficient: 1000,
  hardeningExponent: 0.3,
  proofStress: 200,
  elongation: 40,
};

/** A joint of a correction that closes with a kink [degrees] and a step [mm]. */
export const madeUpJoint = (number: number, kink: number, hiLo: number): Joint => ({
  ...planned(cut(rail, 1000, 40, { a: 0, b: (kink * Math.PI) / 180 }, { hiLo })).joint,
  number,
});
