import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { add, cross, dot, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';

/** A direction shorter than this says nothing. */
const NOTHING = 1e-9;

/**
 * Angle by which the first two feet turn towards each other [rad], in is positive: between their two directions out of
 * the tube, seen square to the plane of the wanted frame, or where that is in space to the plane that lies nearest to its
 * feet and corners. 0 where there are no two feet.
 *
 * @param outward directions out of the feet, of a frame that is laid on the wanted one
 */
export function toeOf(wanted: FrameGeometry, outward: readonly Vector3[]): number {
  const [first, second] = outward;
  const [from, to] = wanted.feet;
  if (first === undefined || second === undefined || from === undefined || to === undefined) return 0;
  const plane = wanted.planeNormal ?? nearestPlane([...wanted.feet, ...wanted.corners].map(({ point }) => point));
  // legs that stand on the ground point away from the frame: towards each other is towards the line between the feet
  const middle = middleOf([...wanted.corners, ...wanted.feet].map(({ point }) => point));
  const between = scale(add(from.point, to.point), 1 / 2);
  const side = dot(plane, cross(subtract(between, middle), subtract(to.point, from.point)));
  const normal = side < -NOTHING ? scale(plane, -1) : plane;
  const seen = (of: Vector3) => subtract(of, scale(normal, dot(of, normal)));
  const [a, b] = [seen(first), seen(second)];
  return Math.atan2(dot(cross(b, a), normal), dot(a, b));
}

const middleOf = (points: readonly Vector3[]): Vector3 =>
  scale(points.reduce(add, { x: 0, y: 0, z: 0 }), 1 / Math.max(points.length, 1));

/** Unit normal of the plane with the least sum of squared distances from points; z where they are all on one line. */
function nearestPlane(points: readonly Vector3[]): Vector3 {
  const middle = middleOf(points);
  const spread = new Matrix(3, 3);
  for (const point of points) {
    const off = subtract(point, middle);
    const row = Matrix.rowVector([off.x, off.y, off.z]);
    spread.add(row.transpose().mmul(row));
  }
  const { eigenvectorMatrix, realEigenvalues } = new EigenvalueDecomposition(spread, { assumeSymmetric: true });
  const order = [...realEigenvalues.keys()].sort((a, b) => (realEigenvalues[a] ?? 0) - (realEigenvalues[b] ?? 0));
  const [least = 0, second = 0, most = 0] = order.map((index) => realEigenvalues[index] ?? 0);
  const flat = second - least > NOTHING * most;
  const [x = 0, y = 0, z = 0] = flat ? eigenvectorMatrix.getColumn(order[0] ?? 0) : [];
  return unit({ x, y, z }) ?? { x: 0, y: 0, z: 1 };
}
