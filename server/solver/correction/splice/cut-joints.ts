import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import { inverted, turned, turnOf, composed, moved, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { add, angleBetween, dot, length, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { CutJoint, LetIn } from '../cut-joint.ts';
import { letInRadius, type ClosedSides } from './joint-closing.ts';
import type { SolvedSplice } from './solve-splice.ts';

/**
 * The joints of a solved splice as they are cut, ordered by member and station. Both face planes bisect the tangents
 * that meet there; what gap and shrinkage ask for is shared by the two faces.
 *
 * @param lay lays the closed frame on the wanted one
 */
export function cutJoints(splice: SolvedSplice, frame: FrameGeometry, lay: RigidMotion): CutJoint[] {
  const { gap, shrinkage } = splice.problem.sizes;
  const joints = splice.joints.flatMap(({ joint, middle, sides }): (CutJoint & { index: number })[] => {
    const { stretch } = joint.place;
    const member = frame.members[stretch.member];
    const [motionA, motionB] = [splice.motions[joint.bodyA], splice.motions[joint.bodyB]];
    if (member === undefined || motionA === undefined || motionB === undefined) return [];
    const { a, b, half, along, letIn } = sides;
    const spare = (gap - shrinkage) / 2;
    const piece = letInPiece(sides, { gap, shrinkage });
    const bisecting = (one: Vector3, other: Vector3): Vector3 => unit(add(one, other)) ?? one;
    const normals =
      letIn === null ? [along, along] : [bisecting(a.tangent, letIn.atA), bisecting(letIn.atB, b.tangent)];
    const across = subtract(sides.gap, scale(along, dot(sides.gap, along)));
    const room = Math.max(half, 0);
    return [
      {
        index: stretch.member,
        member,
        stationA: middle - half - spare,
        stationB: middle + half + spare,
        meetsA: middle - half,
        meetsB: middle + half,
        normalA: turned(inverted(motionA), normals[0] ?? along),
        normalB: turned(inverted(motionB), normals[1] ?? along),
        kink: piece === null ? angleBetween(a.tangent, b.tangent) : Math.max(piece.kinkA, piece.kinkB),
        hiLo: letIn === null ? length(across) : 0,
        twist: dot(turnOf(composed(inverted(motionA), motionB)), turned(inverted(motionA), a.tangent)),
        letIn: piece,
        point: moved(lay, letIn === null ? a.point : scale(add(a.point, b.point), 1 / 2)),
        range: { from: stretch.from + room, to: stretch.to - room },
        bounds: { from: stretch.startRule, to: stretch.endRule },
      },
    ];
  });
  return joints
    .sort((one, other) => one.index - other.index || one.meetsA - other.meetsA)
    .map(({ index: _, ...joint }) => joint);
}

/**
 * New tube from side to side: its two welds take a gap and give back their shrinkage each. Half of that is the old
 * tube's, so that what is taken along the two axes of a kink leaves no step across it.
 */
function letInPiece(sides: ClosedSides, weld: { gap: number; shrinkage: number }): LetIn | null {
  const { a, b, gap, letIn } = sides;
  if (letIn === null) return null;
  const radius = letInRadius(a);
  const chord = length(gap);
  const angle = angleBetween(letIn.atA, letIn.atB);
  const bent = angle === 0 ? null : radius;
  const finished = (bent === null ? chord : bent * angle) - (weld.gap - weld.shrinkage);
  return {
    length: finished,
    radius: bent,
    angle: bent === null ? 0 : finished / bent,
    kinkA: angleBetween(a.tangent, letIn.atA),
    kinkB: angleBetween(letIn.atB, b.tangent),
  };
}
