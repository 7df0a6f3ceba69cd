import type { Joint, JointFace } from '../../plan/correction.ts';
import type { FlatPoint, ViewMember } from '../../plan/view.ts';
import { outsideLiesLeft } from '../correction/outside-lies-left.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { sliceCentreline } from '../geometry/slice.ts';
import { outlineOf } from './outline.ts';
import { PROJECTIONS, rounded } from './projection.ts';

/**
 * What falls out of a flat frame between the two faces of each joint, its ends leaning as the faces do.
 *
 * @param frame the frame as it came back, where it lies on the picture
 */
export function scrapOutlines(joints: readonly Joint[], frame: FrameGeometry, outsideDiameter: number): ViewMember[] {
  return joints.flatMap((joint) => {
    const member = frame.members.find(({ name }) => name === joint.member);
    const [from, to] = [joint.faceA.station.value, joint.faceB.station.value];
    if (member === undefined || to <= from) return [];
    const pieces = planPieces(sliceCentreline(member.centreline, from, to));
    const drawn = outlineOf({ name: joint.member, pieces, closed: true }, PROJECTIONS.top, outsideDiameter);
    const [left = [], right = []] = drawn.edges;
    const lean = (face: JointFace) => {
      const outsideForward = Math.cos((face.tiltDirection * Math.PI) / 180);
      const leftForward = outsideLiesLeft(member, face.station.value, frame) ? outsideForward : -outsideForward;
      const reach = (outsideDiameter / 2) * Math.tan((face.tilt.value * Math.PI) / 180) * leftForward;
      const tangent = placeAt(member.centreline, face.station.value)?.tangent ?? { x: 0, y: 0 };
      return [tangent.x * reach, tangent.y * reach] as const;
    };
    const [start, finish] = [lean(joint.faceA), lean(joint.faceB)];
    const one = leant(left, start, finish, 1);
    const other = leant(right, start, finish, -1);
    const caps = [
      [one[0], other[0]],
      [one.at(-1), other.at(-1)],
    ].flatMap(([a, b]): FlatPoint[][] => (a === undefined || b === undefined ? [] : [[a, b]]));
    return [{ ...drawn, edges: [one, other, ...caps] }];
  });
}

/** An edge with its first and last point moved along the tube: one way on the left, the other way on the right. */
const leant = (
  edge: readonly FlatPoint[],
  start: readonly [number, number],
  finish: readonly [number, number],
  side: 1 | -1,
): FlatPoint[] =>
  edge.map(([x, y], index) => {
    if (index === 0) return rounded([x + side * start[0], y + side * start[1]]);
    if (index === edge.length - 1) return rounded([x + side * finish[0], y + side * finish[1]]);
    return [x, y];
  });
