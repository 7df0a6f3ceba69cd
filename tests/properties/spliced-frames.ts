import { newJob } from '../../server/job/default-job.ts';
import type { Closing } from '../../server/job/closing.ts';
import type { Frame } from '../../server/job/frame.ts';
import type { CorrectionTarget } from '../../server/solver/correction/corrected.ts';
import { correctionTargets } from '../../server/solver/correction/correction-targets.ts';
import type { Candidate } from '../../server/solver/correction/splice/candidate.ts';
import { layoutOf } from '../../server/solver/correction/splice/layouts.ts';
import { groundOf, solvedAs, type SpliceTask } from '../../server/solver/correction/splice/search-splices.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry, Spot } from '../../server/solver/frame/frame-geometry.ts';
import { cross, length } from '../../server/solver/geometry/vector.ts';
import { moved, turned, type RigidMotion } from '../../server/solver/geometry/rigid-motion.ts';
import { movedLine } from '../../server/solver/geometry/moved-centreline.ts';
import { settledClosing } from '../solver/settled-closing.ts';

export const DEGREE = Math.PI / 180;

/** Tube of the frames here; lengths of a frame that is scaled are scaled with it. */
export const OUTSIDE_DIAMETER = 38.1;
const CORNER_RADIUS = 114.3;

export type HoopSizes = {
  readonly width: number;
  readonly widthAtFeet?: number;
  readonly legs: readonly [number, number];
  /** Radius of the crown; null for a straight one. */
  readonly crown?: number | null;
  /** Distances of inner crossbars from the feet. */
  readonly bars?: readonly number[];
  readonly scale?: number;
};

/** A hoop by its centrelines [mm]. */
export function hoopOf({ width, widthAtFeet, legs, crown = null, bars = [], scale = 1 }: HoopSizes): FrameGeometry {
  const centre = (value: number) => ({ value: value * scale, reference: 'centre' as const });
  return drawnAs(
    {
      shape: 'hoop',
      width: centre(width),
      widthAtFeet: widthAtFeet === undefined ? null : centre(widthAtFeet),
      leftLeg: centre(legs[0]),
      rightLeg: centre(legs[1]),
      crossbar: crown === null ? { form: 'straight' } : { form: 'crowned', radius: crown * scale },
      innerCrossbars: bars.map((bar) => ({ fromFoot: centre(bar) })),
    },
    scale,
  );
}

export function drawnAs(frame: Frame, scale = 1): FrameGeometry {
  const { geometry } = drawFrame(frame, {
    outsideDiameter: OUTSIDE_DIAMETER * scale,
    cornerRadius: CORNER_RADIUS * scale,
    root: '/frame',
    closingStraight: () => null,
  });
  if (geometry === null) throw new Error('the frame of a test is not drawn');
  return geometry;
}

/** A frame stood somewhere else in space. */
export function stoodElsewhere(frame: FrameGeometry, motion: RigidMotion): FrameGeometry {
  const spot = (one: Spot): Spot => ({ ...one, point: moved(motion, one.point) });
  return {
    members: frame.members.map((member) => ({ ...member, centreline: movedLine(motion, member.centreline) })),
    checks: frame.checks.map((check) => ({ ...check, from: spot(check.from), to: spot(check.to) })),
    feet: frame.feet.map(spot),
    corners: frame.corners.map(spot),
    planeNormal: frame.planeNormal === null ? null : turned(motion, frame.planeNormal),
  };
}

/** Splices of `actual` that make it as `wanted`; no gap, no shrinkage and a thin saw unless they are given. */
export function taskOf(
  wanted: FrameGeometry,
  actual: FrameGeometry,
  more: { closing?: Partial<Closing>; tape?: number; scale?: number; tolerance?: number } = {},
): SpliceTask {
  const { tape = 1, scale = 1, tolerance = 3 * scale } = more;
  const closing = settledClosing({
    ...newJob('hoop').closing,
    kerf: 1.2 * scale,
    shrinkage: 0.5 * scale,
    ...more.closing,
  });
  const outsideDiameter = OUTSIDE_DIAMETER * scale;
  const { targets } = correctionTargets({ fixing: [], wanted, actual, outsideDiameter, tape: tape * scale, tolerance });
  const { kerf, gap, shrinkage } = closing;
  const [one, other] = [wanted.planeNormal, actual.planeNormal];
  return {
    frame: actual,
    targets,
    planeNormal: one !== null && other !== null && length(cross(one, other)) < 1e-9 ? one : null,
    closing,
    sizes: { outsideDiameter, kerf, gap, shrinkage, tape: tape * scale },
    wall: 1.65 * scale,
  };
}

/** A layout with joints at given stations of given members, solved. */
export function splicedAt(
  task: SpliceTask,
  joints: readonly (readonly [member: string, station: number])[],
  movable = false,
): Candidate | undefined {
  const ground = groundOf(task);
  const places = joints.map(([name, at]) => {
    const member = ground.memberIndex.get(name);
    const stretch = ground.stretches.find((one) => one.member === member && one.from <= at && at <= one.to);
    if (stretch === undefined) throw new Error(`no joint may stand at ${String(at)} of ${name}`);
    return { stretch, at, movable };
  });
  return solvedAs(layoutOf(ground.graph, places), ground, task);
}

/** The largest distance of a point from where it must be, guides left out [mm]. */
export const misfitOf = ({ fixingMisfit, cornerMisfit }: Candidate): number => Math.max(fixingMisfit, cornerMisfit);

/** What is taken out at each joint between the two centrelines; negative: tube that is missing [mm]. */
export const removedAt = ({ splice }: Candidate): number[] => splice.joints.map(({ sides }) => 2 * sides.half);

export const totalOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Targets alone, of points given by member, station and where they must be. */
export const targetAt = (spot: Spot, wanted: CorrectionTarget['wanted']): CorrectionTarget => ({
  spot,
  off: { x: 0, y: 0, z: 0 },
  wanted,
  along: null,
  tolerance: 1,
  kind: 'fixing',
  field: '',
  name: '',
  fixing: 'foot',
});
