import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt, type Piece } from '../geometry/centreline.ts';
import { cross, dot, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';

/** The way from an arc's centre outwards, where the tube runs along `tangent`. */
const outOfArc = (piece: Extract<Piece, { kind: 'arc' }>, tangent: Vector3): Vector3 =>
  scale(cross(piece.normal, tangent), -1);

/**
 * The outside generator's direction at a station: on an arc away from its centre, on a straight away from the middle
 * of the frame.
 *
 * @param middle a point in the middle of the frame, or null where the frame has none
 * @returns a unit vector square to the centreline; undefined on a straight that has no inside
 */
export function outsideAt(member: MemberGeometry, station: number, middle: Vector3 | null): Vector3 | undefined {
  const place = placeAt(member.centreline, station);
  if (place === undefined) return undefined;
  if (place.piece.kind === 'arc') return outOfArc(place.piece, place.tangent);
  if (middle === null) return undefined;
  const away = subtract(place.point, middle);
  const square = subtract(away, scale(place.tangent, dot(away, place.tangent)));
  // 1 µm: nearer than that the middle lies on the tube's own line
  return Math.hypot(square.x, square.y, square.z) > 1e-3 ? unit(square) : undefined;
}
