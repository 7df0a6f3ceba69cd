import type { Centreline, Piece } from './centreline.ts';
import { placeAt } from './centreline.ts';
import { arcCentre } from './slice.ts';
import { cross, dot, length, subtract, type Vector3 } from './vector.ts';

/** The place on a centreline that is nearest to a point, and how far it is [mm]. */
export type Closest = { readonly station: number; readonly point: Vector3; readonly distance: number };

/** Stations along one piece that can be nearest to a point [mm from its start]. */
function candidates(piece: Piece, to: Vector3): number[] {
  if (piece.kind === 'straight') {
    return [Math.min(piece.length, Math.max(0, dot(subtract(to, piece.start), piece.direction)))];
  }
  const centre = arcCentre(piece);
  const from = subtract(piece.start, centre);
  const goal = subtract(to, centre);
  const turn = Math.atan2(dot(cross(from, goal), piece.normal), dot(from, goal));
  const onCircle = (turn < 0 ? turn + 2 * Math.PI : turn) * piece.radius;
  return onCircle <= piece.length ? [onCircle, 0, piece.length] : [0, piece.length];
}

/** The nearest place on a centreline; undefined for one without pieces. Exact: a foot of the perpendicular or an end. */
export function closestStation(line: Centreline, to: Vector3): Closest | undefined {
  let best: Closest | undefined;
  let begin = 0;
  for (const piece of line.pieces) {
    for (const along of candidates(piece, to)) {
      const point = placeAt({ pieces: [piece], length: piece.length }, along)?.point;
      if (point === undefined) continue;
      const distance = length(subtract(point, to));
      if (best === undefined || distance < best.distance) best = { station: begin + along, point, distance };
    }
    begin += piece.length;
  }
  return best;
}
