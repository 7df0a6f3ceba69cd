import {
  arcPiece,
  centrelineFromChain,
  placeOn,
  straightPiece,
  type Centreline,
  type Piece,
  type Place,
} from './centreline.ts';
import { add, cross, scale, type Vector3 } from './vector.ts';

/** The end of a piece: where it stops and which way it goes there. */
export const pieceEnd = (piece: Piece): Place => placeOn(piece, piece.length);

/** Centre of an arc. */
export const arcCentre = (arc: Extract<Piece, { kind: 'arc' }>): Vector3 =>
  add(arc.start, scale(cross(arc.normal, arc.direction), arc.radius));

/** Stations at which each piece begins, and the whole length at the end. */
export function pieceStations(centreline: Centreline): number[] {
  const stations = [0];
  for (const piece of centreline.pieces) stations.push((stations.at(-1) ?? 0) + piece.length);
  return stations;
}

/**
 * The part of a centreline between two stations [mm]. Stations before the first or after the last piece carry the
 * end pieces on, as `placeAt` does.
 */
export function sliceCentreline(centreline: Centreline, from: number, to: number): Centreline {
  const stations = pieceStations(centreline);
  const last = centreline.pieces.length - 1;
  const pieces: Piece[] = [];
  for (const [index, piece] of centreline.pieces.entries()) {
    const begin = stations[index] ?? 0;
    const end = begin + piece.length;
    const low = index === 0 ? from : Math.max(from, begin);
    const high = index === last ? to : Math.min(to, end);
    if (high - low <= 1e-9) continue;
    pieces.push(partOf(piece, low - begin, high - low));
  }
  return { pieces, length: pieces.reduce((sum, piece) => sum + piece.length, 0) };
}

/** The part of a piece from `skip` on, `length` long [mm], as a piece of its own. */
export function partOf(piece: Piece, skip: number, length: number): Piece {
  const { point: start, tangent: direction } = placeOn(piece, skip);
  return piece.kind === 'straight'
    ? straightPiece({ start, direction, length })
    : arcPiece({ ...piece, start, direction, angle: length / piece.radius });
}

/** A centreline laid again from its own start with some pieces changed; arcs keep their rotation to each other, and their radius unless it is given. */
export function relay(
  centreline: Centreline,
  change: (piece: Piece, index: number) => { length: number; angle: number; radius?: number },
): Centreline {
  const [first] = centreline.pieces;
  if (first === undefined) return centreline;
  const firstArc = centreline.pieces.find((piece) => piece.kind === 'arc');
  const normal = firstArc?.kind === 'arc' ? firstArc.normal : anyNormal(first.direction);
  let before = normal;
  const links = centreline.pieces.map((piece, index) => {
    const { length, angle, radius } = change(piece, index);
    if (piece.kind === 'straight') return { kind: 'straight' as const, length };
    const rotation = Math.atan2(
      dotCross(before, piece.normal, piece.direction),
      before.x * piece.normal.x + before.y * piece.normal.y + before.z * piece.normal.z,
    );
    before = piece.normal;
    return { kind: 'arc' as const, radius: radius ?? piece.radius, angle, rotation, made: piece.made };
  });
  return centrelineFromChain({ point: first.start, direction: first.direction, normal }, links);
}

const dotCross = (a: Vector3, b: Vector3, c: Vector3): number => {
  const turned = cross(a, b);
  return turned.x * c.x + turned.y * c.y + turned.z * c.z;
};

/** Any direction square to another: only needed where a centreline has no arc. */
const anyNormal = (direction: Vector3): Vector3 =>
  Math.abs(direction.z) < 0.9 ? cross({ x: 0, y: 0, z: 1 }, direction) : cross({ x: 1, y: 0, z: 0 }, direction);
