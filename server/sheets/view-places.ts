import type { Point } from '../plan/figure.ts';
import type { FlatPoint, View, ViewMember } from '../plan/view.ts';

const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** A point or a direction of the frame's own axes on a view [mm at full size, y up]. */
export const onView = ({ right, up }: Pick<View, 'right' | 'up'>, at: Point): FlatPoint => [
  dot(at, right),
  dot(at, up),
];

/** How far a direction points out of the drawing, at the reader. */
export const towardsReader = ({ right, up }: Pick<View, 'right' | 'up'>, at: Point): number =>
  dot(at, {
    x: right.y * up.z - right.z * up.y,
    y: right.z * up.x - right.x * up.z,
    z: right.x * up.y - right.y * up.x,
  });

/** A tube seen nearly from its end has no way of its own on the drawing. */
const END_ON = 1e-6;

/** The way that a tube runs on the drawing at the place of its centreline nearest to a point: a unit vector. */
export function tubeWay(centreline: ViewMember['centreline'], [px, py]: FlatPoint): FlatPoint {
  let nearest = Infinity;
  let way: FlatPoint = [0, 1];
  for (const [index, [x1, y1]] of centreline.entries()) {
    const before = centreline[index - 1];
    if (before === undefined) continue;
    const [x0, y0] = before;
    const [dx, dy] = [x1 - x0, y1 - y0];
    const size = Math.hypot(dx, dy);
    if (size < END_ON) continue;
    const share = Math.max(0, Math.min(1, ((px - x0) * dx + (py - y0) * dy) / (size * size)));
    const off = Math.hypot(px - x0 - share * dx, py - y0 - share * dy);
    if (off < nearest) [nearest, way] = [off, [dx / size, dy / size]];
  }
  return way;
}

/** Length of a line on the drawing [mm]. */
export const drawnLength = (points: readonly FlatPoint[]): number =>
  points.reduce((sum, [x, y], index) => {
    const before = points[index - 1];
    return before === undefined ? sum : sum + Math.hypot(x - before[0], y - before[1]);
  }, 0);
