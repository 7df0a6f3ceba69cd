import type { FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import { arcPiece, placeAt, straightPiece, type Centreline } from '../geometry/centreline.ts';
import { angleBetween, cross, rotate, unit, type Vector3 } from '../geometry/vector.ts';
import { moveDirection, movePoint, type PlaneMotion } from './plane-motion.ts';

/** Two planes count as one up to this angle between their normals [rad]; far below what a bender can hold. */
const SAME_PLANE = 1e-9;
const Z: Vector3 = { x: 0, y: 0, z: 1 };

const mapCentreline = (
  line: Centreline,
  point: (at: Vector3) => Vector3,
  direction: (of: Vector3) => Vector3,
): Centreline => ({
  ...line,
  pieces: line.pieces.map((piece) => {
    const moved = { start: point(piece.start), direction: direction(piece.direction) };
    return piece.kind === 'straight'
      ? straightPiece({ ...moved, length: piece.length })
      : arcPiece({ ...piece, ...moved, normal: direction(piece.normal) });
  }),
});

/** A centreline moved in the plane. */
export const moveCentreline = (line: Centreline, motion: PlaneMotion): Centreline =>
  mapCentreline(
    line,
    (at) => movePoint(motion, at),
    (of) => moveDirection(motion, of),
  );

/**
 * The frame turned so that its plane is x-y, its corners taken at the middle of each bend (where a template or a
 * tape finds them).
 *
 * @returns undefined for a frame in space
 */
export function flatFrame(frame: FrameGeometry): FrameGeometry | undefined {
  if (frame.planeNormal === null) return undefined;
  const tilt = angleBetween(frame.planeNormal, Z);
  const flat = tilt < SAME_PLANE || Math.PI - tilt < SAME_PLANE;
  const axis = flat ? undefined : unit(cross(frame.planeNormal, Z));
  const turn = (of: Vector3) => (axis === undefined ? of : rotate(of, axis, tilt));
  const turnSpot = (spot: Spot): Spot => ({ ...spot, point: turn(spot.point) });
  const members = frame.members.map((member) => ({
    ...member,
    centreline: mapCentreline(member.centreline, turn, turn),
  }));
  return {
    members,
    planeNormal: Z,
    feet: frame.feet.map(turnSpot),
    corners: frame.corners.map((spot) => {
      const line = members.find((member) => member.name === spot.member)?.centreline;
      const point = line === undefined ? undefined : placeAt(line, spot.station)?.point;
      return point === undefined ? turnSpot(spot) : { ...spot, point };
    }),
    checks: frame.checks.map((check) => ({ ...check, from: turnSpot(check.from), to: turnSpot(check.to) })),
  };
}
