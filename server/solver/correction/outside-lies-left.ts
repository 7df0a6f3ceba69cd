import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { cross, dot, subtract, type Vector3 } from '../geometry/vector.ts';
import { curvature } from './crossings.ts';

/**
 * Whether the outside of the curve (of the frame, on a straight) lies to the left of the way the tube goes, in a
 * flat frame.
 */
export function outsideLiesLeft(member: MemberGeometry, station: number, frame: FrameGeometry): boolean {
  const place = placeAt(member.centreline, station);
  if (place === undefined) return true;
  const bent = curvature(place.piece);
  if (bent !== 0) return bent < 0;
  const left = cross({ x: 0, y: 0, z: 1 }, place.tangent);
  return dot(left, subtract(place.point, middleOf(frame))) >= 0;
}

/** Middle of the box that the feet and corners span. */
function middleOf(frame: FrameGeometry): Vector3 {
  const points = [...frame.feet, ...frame.corners].map((spot) => spot.point);
  const mid = (pick: (point: Vector3) => number) => {
    const values = points.map(pick);
    return values.length === 0 ? 0 : (Math.min(...values) + Math.max(...values)) / 2;
  };
  return { x: mid((point) => point.x), y: mid((point) => point.y), z: 0 };
}
