import { newJob } from '../../server/job/default-job.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { CutJoint } from '../../server/solver/correction/cut-joint.ts';
import type { FaceContext } from '../../server/solver/correction/joint-face.ts';
import { planJoints } from '../../server/solver/correction/joint-plan.ts';
import type { EndGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, placeAt, type Link } from '../../server/solver/geometry/centreline.ts';
import { rotate, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { frameOfMembers } from '../properties/tubes-in-space.ts';

export const radians = (degrees: number) => (degrees * Math.PI) / 180;
const FREE: EndGeometry = { kind: 'free' };
const UP: Vector3 = { x: 0, y: 0, z: 1 };
const job = newJob('hoop');
export const closing = { ...job.closing, gap: 0, shrinkage: 0, kerf: 1.6 };
export const tube = { ...job.tube, outsideDiameter: 48.3, wall: 2 };
export const context = {
  tube,
  tape: 1,
  paperThickness: 0,
  templateStations: 24,
  templates: true,
  quality: 'B',
} as const;

/** A flat member that runs along +x from the origin and turns right at its bends, so that its left is outside. */
export const member = (links: readonly Link[], ends: Partial<MemberGeometry> = {}): MemberGeometry => ({
  name: 'rail',
  centreline: centrelineFromChain(
    { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: -1 } },
    links,
  ),
  closed: false,
  closing: null,
  start: FREE,
  finish: FREE,
  ...ends,
});
export const bend = (radius: number, angle: number, made: 'die' | 'rolled' = 'die'): Link => ({
  kind: 'arc',
  radius,
  angle,
  rotation: 0,
  made,
});
export const line = (length: number): Link => ({ kind: 'straight', length });
export const rail = member([line(2000)]);

/** Below the rail, so that its +y side is outside. */
const other = { ...member([line(2000)]), name: 'below' };
export const frame = (own: MemberGeometry) => ({
  ...frameOfMembers(own, {
    ...other,
    centreline: centrelineFromChain({ point: { x: 0, y: -900, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: UP }, [
      line(2000),
    ]),
  }),
  planeNormal: UP,
});

/** Faces that lean in the plane: positive turns their normals left, away from the long side of face A. */
export function joint(
  own: MemberGeometry,
  at: number,
  removed: number,
  lean: { a: number; b: number },
  extra: Partial<CutJoint> = {},
): CutJoint {
  const [stationA, stationB] = [at - removed / 2, at + removed / 2];
  const normal = (station: number, angle: number) => rotate(placeAt(own.centreline, station)!.tangent, UP, angle);
  return {
    member: own,
    stationA,
    stationB,
    meetsA: stationA,
    meetsB: stationB,
    normalA: normal(stationA, lean.a),
    normalB: normal(stationB, lean.b),
    kink: Math.abs(lean.a - lean.b),
    hiLo: 0,
    twist: 0,
    letIn: null,
    point: { x: 0, y: 0, z: 0 },
    range: { from: 100, to: 1900 },
    bounds: { from: 'end', to: 'weld' },
    ...extra,
  };
}

export function planned(one: CutJoint, change: Partial<typeof closing> = {}, faces: Partial<FaceContext> = {}) {
  const { joints, findings } = planJoints(
    [one],
    frame(one.member),
    { ...closing, ...change },
    { ...context, ...faces },
  );
  return { joint: joints[0] as Joint, codes: findings.map(({ code, grade }) => `${code} ${grade}`), findings };
}
