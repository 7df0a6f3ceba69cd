import type { RunPoint } from '../../server/job/frame.ts';

/** How far a point at the end of a run stands from the last [mm]: a place to type over; our own choice. */
const STEP = 400;

/** A fresh point beyond `from`, on in the direction that the run comes from `before`; along x where it has none. */
function onwards(from: RunPoint, before: RunPoint | undefined): RunPoint {
  const way = {
    x: from.x - (before?.x ?? from.x),
    y: from.y - (before?.y ?? from.y),
    z: from.z - (before?.z ?? from.z),
  };
  const length = Math.hypot(way.x, way.y, way.z);
  const along = length === 0 ? { x: 1, y: 0, z: 0 } : { x: way.x / length, y: way.y / length, z: way.z / length };
  const place = (start: number, share: number): number => Math.round((start + share * STEP) * 1000) / 1000;
  return { x: place(from.x, along.x), y: place(from.y, along.y), z: place(from.z, along.z), radius: null };
}

/**
 * A fresh point to stand before the one at an index: half way between its neighbours, or 400 mm on in the same
 * direction at an end of the run. In a closed run the last point and the first are neighbours.
 */
export function freshPoint(rows: readonly unknown[], index = rows.length, closed = false): RunPoint {
  const points = rows as readonly RunPoint[];
  const before = points[index - 1] ?? (closed ? points.at(-1) : undefined);
  const after = points[index] ?? (closed ? points[0] : undefined);
  if (before !== undefined && after !== undefined) {
    const middle = (one: number, other: number): number => (one + other) / 2;
    return {
      x: middle(before.x, after.x),
      y: middle(before.y, after.y),
      z: middle(before.z, after.z),
      radius: null,
    };
  }
  if (before !== undefined) return onwards(before, points[index - 2]);
  if (after !== undefined) return onwards(after, points[1]);
  return { x: 0, y: 0, z: 0, radius: null };
}
