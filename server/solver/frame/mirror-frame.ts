import type { Centreline, Piece } from '../geometry/centreline.ts';
import type { Vector3 } from '../geometry/vector.ts';
import type { FrameGeometry, Spot } from './frame-geometry.ts';

/** A point or a direction in the mirror z = 0. */
const mirrored = ({ x, y, z }: Vector3): Vector3 => ({ x, y, z: -z || 0 });

/** The axis that an arc turns right-handed about, in the mirror: an axis of turning is mirrored and turned round. */
const mirroredAxis = ({ x, y, z }: Vector3): Vector3 => ({ x: -x || 0, y: -y || 0, z });

/**
 * The frame for the other side: mirrored in the plane z = 0, so that every rotation between two bends changes sign. A
 * frame that lies in that plane stays as it is.
 */
export function mirrorFrame(frame: FrameGeometry): FrameGeometry {
  return {
    members: frame.members.map((member) => ({ ...member, centreline: mirrorCentreline(member.centreline) })),
    checks: frame.checks.map((check) => ({ ...check, from: mirrorSpot(check.from), to: mirrorSpot(check.to) })),
    feet: frame.feet.map(mirrorSpot),
    corners: frame.corners.map(mirrorSpot),
    planeNormal: frame.planeNormal === null ? null : mirroredAxis(frame.planeNormal),
  };
}

const mirrorSpot = (spot: Spot): Spot => ({ ...spot, point: mirrored(spot.point) });

const mirrorCentreline = ({ pieces, length }: Centreline): Centreline => ({
  pieces: pieces.map((piece): Piece => {
    const placed = { start: mirrored(piece.start), direction: mirrored(piece.direction) };
    return piece.kind === 'straight'
      ? { ...piece, ...placed }
      : { ...piece, ...placed, normal: mirroredAxis(piece.normal) };
  }),
  length,
});
