import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { middleOf as middleOfPoints } from '../geometry/box.ts';
import { placeAt, type Piece } from '../geometry/centreline.ts';
import { pieceEnds } from '../geometry/slice.ts';
import { cross, dot, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';

/** The way from an arc's centre outwards, where the tube runs along `tangent`. */
const outOfArc = (piece: Extract<Piece, { kind: 'arc' }>, tangent: Vector3): Vector3 =>
  scale(cross(piece.normal, tangent), -1);

/** Middle of the box round the ends of all pieces of a frame's members; null where there are none. */
export const middleOf = (members: Iterable<MemberGeometry>): Vector3 | null =>
  middleOfPoints([...members].flatMap(({ centreline }) => pieceEnds(centreline))) ?? null;

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

/** What tells inside from outside in a frame: a point in its middle, and the normal of its plane where it lies in one. */
export type FrameSides = { readonly middle: Vector3 | null; readonly normal: Vector3 | null };

export const sidesOf = ({ members, planeNormal }: Pick<FrameGeometry, 'members' | 'planeNormal'>): FrameSides => ({
  middle: middleOf(members),
  normal: planeNormal,
});

/**
 * The outside generator's direction at a station, for every member: where a straight has no inside, because the middle
 * of the frame lies on its own line, it is the left of the way that the tube goes, seen against the plane's normal, or
 * from above in a frame that lies in no plane; on an upright tube of such a frame it is +x.
 *
 * @returns a unit vector square to the centreline; undefined for a member without pieces
 */
export function outsideOf(
  member: MemberGeometry,
  station: number,
  { middle, normal }: FrameSides,
): Vector3 | undefined {
  const known = outsideAt(member, station, middle);
  if (known !== undefined) return known;
  const tangent = placeAt(member.centreline, station)?.tangent;
  if (tangent === undefined) return undefined;
  const left = cross(normal ?? { x: 0, y: 0, z: 1 }, tangent);
  // steeper than this a tube has no left from above: about 0.06°
  if (Math.hypot(left.x, left.y, left.z) > 1e-3) return unit(left);
  const ahead = { x: 1, y: 0, z: 0 };
  return unit(subtract(ahead, scale(tangent, dot(ahead, tangent))));
}
