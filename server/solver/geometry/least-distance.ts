import type { Piece } from './centreline.ts';
import { partOf, pieceEnd } from './slice.ts';
import { segmentDistance, type Segment } from './segment-distance.ts';
import type { Vector3 } from './vector.ts';

/**
 * A stretch of a centreline as its chord and how far the curve stands off it [mm]: an arc of no more than half a turn
 * lies within its rise of the chord. `piece` is what it is halved from.
 */
export type Stretch = Segment & {
  readonly piece: Piece;
  readonly rise: number;
  readonly low: Vector3;
  readonly high: Vector3;
};

/** Distances are told apart down to this share of the diameter, or of a long member's length; rounding. */
const FINENESS = { diameter: 1e-7, length: 1e-9 };

/** How finely distances of tubes are told apart [mm]: one value a search, so that it ends where curves lie together. */
export const finenessOf = (outsideDiameter: number, longest: number): number =>
  Math.max(FINENESS.diameter * outsideDiameter, FINENESS.length * longest);

function stretchOf(piece: Piece): Stretch {
  const from = piece.start;
  const to = pieceEnd(piece).point;
  const rise = piece.kind === 'straight' ? 0 : piece.radius * (1 - Math.cos(piece.angle / 2));
  const low = { x: Math.min(from.x, to.x) - rise, y: Math.min(from.y, to.y) - rise, z: Math.min(from.z, to.z) - rise };
  const high = { x: Math.max(from.x, to.x) + rise, y: Math.max(from.y, to.y) + rise, z: Math.max(from.z, to.z) + rise };
  return { from, to, piece, rise, low, high };
}

/** A piece as stretches of no more than half a turn each; an arc is on its own circle again after a whole turn. */
export function stretches(whole: Piece): Stretch[] {
  const turns = whole.kind === 'arc' && whole.angle > 2 * Math.PI;
  const piece = turns ? partOf(whole, 0, 2 * Math.PI * whole.radius) : whole;
  const count = piece.kind === 'straight' ? 1 : Math.max(1, Math.ceil(piece.angle / Math.PI - 1e-12));
  if (count === 1) return [stretchOf(piece)];
  const step = piece.length / count;
  return Array.from({ length: count }, (_, index) => stretchOf(partOf(piece, index * step, step)));
}

/** Both halves of a stretch. */
export const halves = ({ piece }: Stretch): Stretch[] => [
  stretchOf(partOf(piece, 0, piece.length / 2)),
  stretchOf(partOf(piece, piece.length / 2, piece.length / 2)),
];

/** True where the boxes round two stretches are a limit or more apart [mm]. */
export const boxesApart = (a: Stretch, b: Stretch, limit: number): boolean =>
  a.low.x - b.high.x >= limit ||
  b.low.x - a.high.x >= limit ||
  a.low.y - b.high.y >= limit ||
  b.low.y - a.high.y >= limit ||
  a.low.z - b.high.z >= limit ||
  b.low.z - a.high.z >= limit;

/**
 * Least distance between two stretches where it is below a limit [mm], else the limit. Exact on straights; on arcs
 * halved until chord and rise leave no doubt (branch and bound), down to `fine` [mm].
 */
export function leastDistance(one: Stretch, two: Stretch, limit: number, fine: number): number {
  let best = limit;
  const open: [Stretch, Stretch][] = [[one, two]];
  for (let pair = open.pop(); pair !== undefined; pair = open.pop()) {
    const [a, b] = pair;
    if (best <= fine) return best;
    if (boxesApart(a, b, best)) continue;
    const chords = segmentDistance(a, b);
    const doubt = a.rise + b.rise;
    if (chords - doubt >= best - fine) continue;
    if (doubt <= fine) {
      best = Math.min(best, chords);
      continue;
    }
    best = Math.min(best, chords + doubt);
    if (a.rise >= b.rise) for (const half of halves(a)) open.push([half, b]);
    else for (const half of halves(b)) open.push([a, half]);
  }
  return best;
}
