import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt, type Centreline, type Piece } from '../geometry/centreline.ts';
import { arcCentre, pieceStations } from '../geometry/slice.ts';
import { cross, dot, subtract, type Vector3 } from '../geometry/vector.ts';

/** Where a member passes the cut line, the piece it does so on, and which way it goes (+1: left to right). */
export type Crossing = {
  readonly member: string;
  readonly station: number;
  readonly piece: Piece;
  /** Stations at which that piece begins and ends [mm]. */
  readonly pieceFrom: number;
  readonly pieceTo: number;
  readonly heading: 1 | -1;
};

/**
 * Every place where a member of a flat frame passes the line x = `cutAt`. A member that only touches the line does
 * not cross it.
 */
export function crossingsOf(members: readonly MemberGeometry[], cutAt: number): Crossing[] {
  return members.flatMap((member) => {
    const stations = pieceStations(member.centreline);
    const found: Crossing[] = [];
    for (const [index, piece] of member.centreline.pieces.entries()) {
      const pieceFrom = stations[index] ?? 0;
      for (const distance of distancesTo(piece, cutAt)) {
        const station = pieceFrom + distance;
        const heading = headingAt(member.centreline, station);
        const seen = found.some((other) => Math.abs(other.station - station) < 1e-6);
        if (heading === 0 || seen || (member.closed && station > member.centreline.length - 1e-6)) continue;
        found.push({ member: member.name, station, piece, pieceFrom, pieceTo: pieceFrom + piece.length, heading });
      }
    }
    return member.closed ? found.map((crossing) => overTheDatum(crossing, member)) : found;
  });
}

/** A closed member whose datum stands in the crossed straight: the straight goes on behind station 0. */
function overTheDatum(crossing: Crossing, member: MemberGeometry): Crossing {
  const { pieces, length } = member.centreline;
  const last = pieces.at(-1);
  if (crossing.pieceFrom > 0 || crossing.piece.kind !== 'straight' || last?.kind !== 'straight') return crossing;
  return { ...crossing, pieceFrom: length - last.length - length };
}

function headingAt(centreline: Centreline, station: number): 1 | -1 | 0 {
  const tangent = placeAt(centreline, station)?.tangent;
  if (tangent === undefined || Math.abs(tangent.x) < 1e-6) return 0;
  return tangent.x > 0 ? 1 : -1;
}

/** Distances along a piece at which it stands on x = `cutAt` [mm]. */
function distancesTo(piece: Piece, cutAt: number): number[] {
  const within = (distance: number) => distance >= -1e-9 && distance <= piece.length + 1e-9;
  if (piece.kind === 'straight') {
    if (Math.abs(piece.direction.x) < 1e-12) return [];
    return [(cutAt - piece.start.x) / piece.direction.x].filter(within);
  }
  const centre = arcCentre(piece);
  const away = subtract(piece.start, centre);
  const sideways: Vector3 = cross(piece.normal, away);
  // x(θ) = centre + away cos θ + sideways sin θ
  const size = Math.hypot(away.x, sideways.x);
  const share = (cutAt - centre.x) / size;
  if (size < 1e-9 || Math.abs(share) > 1) return [];
  const phase = Math.atan2(sideways.x, away.x);
  const swing = Math.acos(share);
  const turns = [phase + swing, phase - swing].map((turn) => ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI));
  return [...new Set(turns)].map((turn) => turn * piece.radius).filter(within);
}

/** How strongly a piece is curved in the plane: 1/R with the sign of its turn about z [1/mm], 0 for a straight. */
export const curvature = (piece: Piece): number =>
  piece.kind === 'straight' ? 0 : Math.sign(dot(piece.normal, { x: 0, y: 0, z: 1 })) / piece.radius;
