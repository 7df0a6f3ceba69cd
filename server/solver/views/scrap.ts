import { RADIANS } from '../geometry/angle.ts';
import type { Joint, JointFace } from '../../plan/joint.ts';
import type { FlatPoint, ViewMember } from '../../plan/view.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { sliceCentreline } from '../geometry/slice.ts';
import { add, cross, dot, scale, type Vector3 } from '../geometry/vector.ts';
import { outsideOf, sidesOf, type FrameSides } from '../joints/outside.ts';
import { acrossOf, caps, outlineOf, sampledMember, type SampledMember } from './outline.ts';
import { project, rounded, type Projection } from './projection.ts';

/**
 * How an end leans: the way the tube goes there, and square to it the way to the side on which the face stands furthest
 * along the tube, as long as the face is steep (tan of its tilt).
 */
type Lean = { readonly tangent: Vector3; readonly steepest: Vector3 };

/** A piece that falls out of a member, found once and drawn in every view. */
export type Scrap = { readonly member: SampledMember; readonly start: Lean; readonly finish: Lean };

/**
 * What falls out between the two faces of each joint, its ends leaning as the faces do. A joint that only lets tube in
 * has none.
 *
 * @param frame the frame as it came back, where it lies on the wanted one
 */
export function scrapsOf(joints: readonly Joint[], frame: FrameGeometry): Scrap[] {
  if (joints.length === 0) return [];
  const sides = sidesOf(frame);
  return joints.flatMap((joint): Scrap[] => {
    const geometry = frame.members.find(({ name }) => name === joint.member);
    const [from, to] = [joint.faceA.station.value, joint.faceB.station.value];
    if (geometry === undefined || to <= from) return [];
    const start = leanOf(geometry, joint.faceA, sides);
    const finish = leanOf(geometry, joint.faceB, sides);
    if (start === undefined || finish === undefined) return [];
    const pieces = planPieces(sliceCentreline(geometry.centreline, from, to));
    return [{ member: sampledMember({ name: joint.member, pieces, closed: true }), start, finish }];
  });
}

function leanOf(member: MemberGeometry, face: JointFace, sides: FrameSides): Lean | undefined {
  const station = face.station.value;
  const tangent = placeAt(member.centreline, station)?.tangent;
  const outside = outsideOf(member, station, sides);
  if (tangent === undefined || outside === undefined) return undefined;
  const slope = Math.tan(face.tilt.value * RADIANS);
  const turn = face.tiltDirection * RADIANS;
  const side = add(scale(outside, Math.cos(turn)), scale(cross(tangent, outside), Math.sin(turn)));
  return { tangent, steepest: scale(side, slope) };
}

/** A scrap as it is drawn in a view: its two edges and its two leaning ends. */
export function scrapOutline(scrap: Scrap, view: Projection, outsideDiameter: number): ViewMember {
  const drawn = outlineOf(scrap.member, view, outsideDiameter);
  const shift = (lean: Lean) => shiftOf(lean, view, outsideDiameter / 2);
  const [start, finish] = [shift(scrap.start), shift(scrap.finish)];
  const [left, right, ...rest] = drawn.edges;
  // a tube seen along its axis is a circle: its faces hide what leans
  if (start === undefined || finish === undefined || left === undefined || right === undefined || rest.length > 0) {
    return drawn;
  }
  const one = leant(left, start, finish, 1);
  const other = leant(right, start, finish, -1);
  return { member: drawn.member, edges: [one, other, ...caps(one, other)], centreline: drawn.centreline };
}

/** By how much the left edge's end moves along the tube on the drawing [mm]; the right one moves the other way. */
function shiftOf({ tangent, steepest }: Lean, view: Projection, radius: number): FlatPoint | undefined {
  const across = acrossOf(tangent, view);
  if (across === undefined) return undefined;
  // the left edge is the generator in the direction of `across`, which lies square to the tube in space as well
  const generator = add(scale(view.right, across[0]), scale(view.up, across[1]));
  const reach = radius * dot(steepest, generator);
  const [x, y] = project(view, tangent);
  return [x * reach, y * reach];
}

/** An edge with its first and last point moved along the tube: one way on the left, the other way on the right. */
const leant = (edge: readonly FlatPoint[], start: FlatPoint, finish: FlatPoint, side: 1 | -1): FlatPoint[] =>
  edge.map(([x, y], index) => {
    if (index === 0) return rounded([x + side * start[0], y + side * start[1]]);
    if (index === edge.length - 1) return rounded([x + side * finish[0], y + side * finish[1]]);
    return [x, y];
  });
