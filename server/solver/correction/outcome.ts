import type { Joint, Way } from '../../plan/correction.ts';
import type { PlanPiece } from '../../plan/frame.ts';
import type { Band, Figure } from '../../plan/figure.ts';
import { figure, input } from '../figure.ts';
import type { FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { length, subtract, type Vector3 } from '../geometry/vector.ts';
import { bestFit, moveDirection, movePoint, type PlaneMotion } from './plane-motion.ts';

/** What a way needs of the shop: welds, cuts, bends, saddles to be made anew, and metres of new tube. */
export type Effort = {
  readonly welds: number;
  readonly cuts: number;
  readonly bends: number;
  readonly tubeMetres: number;
  /** Joints for the purge, on the members of the frame as it came back (or of the new one). */
  readonly purgeJoints: readonly { readonly number: number; readonly member: string; readonly station: number }[];
};

/** A way without its purge and money, which are reckoned from its effort. */
export type WayDraft = Omit<Way, 'purgeSetups' | 'purgeGas' | 'minutes' | 'cost' | 'costAtLeast' | 'unbeaten'> & {
  readonly effort: Effort;
};

const DEGREES = 180 / Math.PI;

/** A frame after a way, still where the way left it: its spots, the directions out of its feet, and its pieces. */
export type Result = {
  readonly feet: readonly Vector3[];
  readonly corners: readonly Vector3[];
  /** Directions out of the tube at each foot. */
  readonly outward: readonly Vector3[];
};

/** The motion that lays a result on the wanted frame by best fit of feet and corners. */
export function layOn(wanted: FrameGeometry, result: Result): PlaneMotion {
  const goals = [...wanted.feet, ...wanted.corners].map((spot) => spot.point);
  const own = [...result.feet, ...result.corners];
  return bestFit(own.flatMap((from, index) => (goals[index] === undefined ? [] : [{ from, to: goals[index] }])));
}

/** Direction out of the tube at a free end. */
export function outwardAt(frame: FrameGeometry, foot: Spot): Vector3 {
  const line = frame.members.find((member) => member.name === foot.member)?.centreline;
  const tangent = line === undefined ? undefined : placeAt(line, foot.station)?.tangent;
  if (line === undefined || tangent === undefined) return { x: 0, y: -1, z: 0 };
  return foot.station > line.length / 2 ? tangent : { x: -tangent.x, y: -tangent.y, z: -tangent.z };
}

/** Misfits of a result, laid on the wanted frame. */
export function misfitsOf(
  wanted: FrameGeometry,
  result: Result,
  doubt: Band | null,
): Pick<Way, 'footMisfit' | 'cornerMisfit' | 'toe'> & { lay: PlaneMotion } {
  const lay = layOn(wanted, result);
  const worst = (own: readonly Vector3[], goals: readonly Spot[]) =>
    own.reduce((most, point, index) => {
      const goal = goals[index]?.point;
      return goal === undefined ? most : Math.max(most, length(subtract(movePoint(lay, point), goal)));
    }, 0);
  const misfit = (value: number, count: number): Figure =>
    figure(value, 'mm', 'm = max |L(p) − q|', [input('n', 'points-compared', count, 'count')], ['procrustes'], doubt);
  const toe = toeOf(result.outward.map((direction) => moveDirection(lay, direction)));
  const asked = toeOf(wanted.feet.map((foot) => outwardAt(wanted, foot)));
  return {
    lay,
    footMisfit: misfit(worst(result.feet, wanted.feet), wanted.feet.length),
    cornerMisfit: misfit(worst(result.corners, wanted.corners), wanted.corners.length),
    toe: figure(
      (toe - asked) * DEGREES,
      'deg',
      'toe = ∠(left, right) − ∠(wanted)',
      [input('t', 'toe-of-wanted', asked * DEGREES, 'deg')],
      ['geometry'],
      null,
    ),
  };
}

/** Angle by which the first two feet lean towards each other [rad]; 0 where there are no two. */
function toeOf(outward: readonly Vector3[]): number {
  const [left, right] = outward;
  if (left === undefined || right === undefined) return 0;
  return Math.atan2(right.x * left.y - right.y * left.x, left.x * right.x + left.y * right.y);
}

/** The largest of some figures of the joints, as one figure. */
export function largest(joints: readonly Joint[], pick: (joint: Joint) => Figure, unit: 'deg' | 'mm'): Figure {
  const value = joints.reduce((most, joint) => Math.max(most, pick(joint).value), 0);
  return figure(value, unit, 'max', [input('n', 'joints', joints.length, 'count')], ['geometry']);
}

export const countFigure = (value: number, name: string): Figure =>
  figure(value, 'count', 'n', [input('n', name, value, 'count')], ['geometry']);

/** Members of a corrected frame, for drawing. */
export type DrawnMember = { readonly name: string; readonly pieces: PlanPiece[] };
