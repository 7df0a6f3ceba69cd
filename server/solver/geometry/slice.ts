import { arcPiece, placeOn, straightPiece, type Centreline, type Link, type Piece, type Place } from './centreline.ts';
import { chainOf, laidAgain } from './chain.ts';
import { add, cross, scale, type Vector3 } from './vector.ts';

/** The end of a piece: where it stops and which way it goes there. */
export const pieceEnd = (piece: Piece): Place => placeOn(piece, piece.length);

/** Where each piece begins and where it stops. */
export const pieceEnds = ({ pieces }: Pick<Centreline, 'pieces'>): Vector3[] =>
  pieces.flatMap((piece) => [piece.start, pieceEnd(piece).point]);

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
  const chain = chainOf(centreline);
  if (chain === undefined) return centreline;
  const links = chain.links.map((link, index): Link => {
    const piece = centreline.pieces[index];
    if (piece === undefined) return link;
    const { length, angle, radius } = change(piece, index);
    if (link.kind === 'straight') return { kind: 'straight', length };
    return { kind: 'arc', radius: radius ?? link.radius, angle, rotation: link.rotation, made: link.made };
  });
  return laidAgain(chain, links);
}
