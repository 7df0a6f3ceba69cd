import type { Centreline } from '../geometry/centreline.ts';
import { placeOn } from '../geometry/centreline.ts';
import { cross, dot, type Vector3 } from '../geometry/vector.ts';

/**
 * Heights along a centreline from one station to another, up or down [mm]: at both, where pieces meet, and at the highest
 * and lowest places of arcs, so that nothing between two of them lies outside of them.
 */
export function heightProfile({ pieces }: Pick<Centreline, 'pieces'>, from: number, to: number, up: Vector3): number[] {
  if (from > to) return heightProfile({ pieces }, to, from, up).reverse();
  const heights: number[] = [];
  let begin = 0;
  for (const piece of pieces) {
    const low = Math.max(0, from - begin);
    const high = Math.min(piece.length, to - begin);
    if (low <= high) {
      heights.push(dot(placeOn(piece, low).point, up));
      if (piece.kind === 'arc') {
        // height R (a sin θ + b (1 − cos θ)), with slope a cos θ + b sin θ
        const along = dot(piece.direction, up);
        const inward = dot(cross(piece.normal, piece.direction), up);
        const level = Math.atan2(-along, inward);
        for (let turn = level - 2 * Math.PI; turn * piece.radius < high; turn += Math.PI)
          if (turn * piece.radius > low) heights.push(dot(placeOn(piece, turn * piece.radius).point, up));
      }
      heights.push(dot(placeOn(piece, high).point, up));
    }
    begin += piece.length;
  }
  return heights;
}

/** How far a profile falls at most from a place to a later one [mm]. */
export function descent(heights: readonly number[]): number {
  let [highest, most] = [-Infinity, 0];
  for (const height of heights) {
    highest = Math.max(highest, height);
    most = Math.max(most, highest - height);
  }
  return most;
}
