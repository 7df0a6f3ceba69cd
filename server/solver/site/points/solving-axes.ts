import { furthestPair } from '../../geometry/furthest-pair.ts';
import { add, cross, dot, length, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import { IN_LINE, type Plane } from './plane-through.ts';

/**
 * Axes in which distances are solved: from a known point, x through the one that is furthest from it. Without a plane the
 * third one lies in x-y and z is square to them; on a plane the place that is looked for lies in x-y.
 */
export type SolvingAxes = {
  readonly origin: Vector3;
  readonly x: Vector3;
  readonly y: Vector3;
  readonly z: Vector3;
  /** The known points that they rest on, by their places in the list: three, or two on a plane. */
  readonly base: readonly number[];
};

export const intoAxes = ({ origin, x, y, z }: SolvingAxes, place: Vector3): Vector3 => {
  const arm = subtract(place, origin);
  return { x: dot(arm, x), y: dot(arm, y), z: dot(arm, z) };
};

export const outOfAxes = ({ origin, x, y, z }: SolvingAxes, place: Vector3): Vector3 =>
  add(origin, add(add(scale(x, place.x), scale(y, place.y)), scale(z, place.z)));

/**
 * The axes for known points: those that span most, so that the others need not be told apart.
 *
 * @returns `offLine` where the points lie in one line (on a plane: on one line square to it), and how far they are off it
 */
export function solvingAxes(
  known: readonly Vector3[],
  plane: Plane | null,
): SolvingAxes | { readonly offLine: number } {
  const seen = plane === null ? known : known.map((point) => onPlane(point, plane));
  const [from, to] = furthestPair(seen);
  const [start, end] = [seen[from], seen[to]];
  if (start === undefined || end === undefined) return { offLine: 0 };
  const x = unit(subtract(end, start));
  const span = length(subtract(end, start));
  if (plane !== null) {
    const size = Math.max(...known.map((point) => length(subtract(point, start))));
    if (x === undefined || span <= IN_LINE * size) return { offLine: span };
    return { origin: start, x, y: cross(plane.normal, x), z: plane.normal, base: [from, to] };
  }
  if (x === undefined) return { offLine: 0 };
  const heights = seen.map((point) => cross(x, subtract(point, start)));
  const third = indexOfMost(heights.map(length));
  const square = heights[third] ?? x;
  const z = unit(square);
  if (z === undefined || length(square) <= IN_LINE * span) return { offLine: length(square) };
  return { origin: start, x, y: cross(z, x), z, base: [from, to, third] };
}

const onPlane = (point: Vector3, { at, normal }: Plane): Vector3 =>
  subtract(point, scale(normal, dot(subtract(point, at), normal)));

const indexOfMost = (values: readonly number[]): number =>
  values.reduce((best, value, index) => (value > (values[best] ?? 0) ? index : best), 0);
