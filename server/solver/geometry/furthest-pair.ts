import { length, subtract, type Vector3 } from './vector.ts';

/** The two of some points that are furthest apart, by their places in the list, the first of several; [0, 0] of one. */
export function furthestPair(points: readonly Vector3[]): readonly [number, number] {
  let best: readonly [number, number] = [0, 0];
  let most = -1;
  for (const [to, end] of points.entries())
    for (const [from, start] of points.slice(0, to).entries()) {
      const apart = length(subtract(end, start));
      if (apart > most) [best, most] = [[from, to], apart];
    }
  return best;
}
