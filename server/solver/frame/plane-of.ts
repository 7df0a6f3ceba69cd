import { pieceEnd } from '../geometry/slice.ts';
import { AXES, ORIGIN, cross, dot, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import type { MemberGeometry } from './frame-geometry.ts';

/** Directions count as one plane's up to this [rad], points up to this share of the frame's size; rounding. */
const FLAT = 1e-9;

/** Which way a plane looks is settled by the first of these that it does not lie along. */
const UPWARD: readonly Vector3[] = [...AXES].reverse();

/**
 * The unit normal of the plane that every centreline lies in, turned towards +z (or +y, or +x, where it lies across);
 * null for a frame in space. Tubes all on one line lie in many planes: the one nearest to x-y is taken.
 */
export function planeOf(members: readonly MemberGeometry[]): Vector3 | null {
  const pieces = members.flatMap((member) => member.centreline.pieces);
  const [first] = pieces;
  if (first === undefined) return null;
  const points = pieces.flatMap((piece) => [piece.start, pieceEnd(piece).point]);
  const offsets = points.map((point) => subtract(point, first.start));
  const size = Math.max(...offsets.map(length));
  const normal = normalOf(
    first.direction,
    pieces.flatMap((piece) => (piece.kind === 'arc' ? [piece.normal] : [])),
    [...pieces.map((piece) => piece.direction), ...offsets.map((offset) => scale(offset, 1 / size))],
  );
  if (normal === undefined) return null;
  const flat =
    offsets.every((offset) => Math.abs(dot(offset, normal)) <= FLAT * size) &&
    pieces.every((piece) => Math.abs(dot(piece.direction, normal)) <= FLAT) &&
    pieces.every((piece) => piece.kind === 'straight' || length(cross(piece.normal, normal)) <= FLAT);
  return flat ? normal : null;
}

function normalOf(along: Vector3, axes: readonly Vector3[], directions: readonly Vector3[]): Vector3 | undefined {
  const [axis] = axes;
  if (axis !== undefined) return upward(axis);
  // the direction that stands widest off the first one gives the surest normal
  const products = directions.map((direction) => cross(along, direction));
  const widest = products.reduce((best, one) => (length(one) > length(best) ? one : best), ORIGIN);
  const normal = length(widest) > FLAT ? unit(widest) : undefined;
  if (normal !== undefined) return upward(normal);
  const [beside] = UPWARD.map((one) => subtract(one, scale(along, dot(one, along)))).filter(
    (one) => length(one) > FLAT,
  );
  return beside === undefined ? undefined : unit(beside);
}

function upward(normal: Vector3): Vector3 {
  for (const axis of UPWARD) {
    const share = dot(normal, axis);
    if (Math.abs(share) > FLAT) return share > 0 ? normal : scale(normal, -1);
  }
  return normal;
}
