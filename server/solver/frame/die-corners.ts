import { LEAST_BEND, tangentLength } from '../geometry/bend-table.ts';
import { isDieBend, placeAt } from '../geometry/centreline.ts';
import { pieceStations } from '../geometry/slice.ts';
import { add, scale, type Vector3 } from '../geometry/vector.ts';
import type { MemberGeometry, Spot } from './frame-geometry.ts';

/** A bend that turns right back, or further, has no apex. */
const NO_APEX = Math.PI - LEAST_BEND;

/** The corners of a member: the apex of each die bend, or its middle where it has none. */
export function dieCorners(member: MemberGeometry): Spot[] {
  const stations = pieceStations(member.centreline);
  return member.centreline.pieces.flatMap((piece, index): Spot[] => {
    if (!isDieBend(piece)) return [];
    const station = (stations[index] ?? 0) + piece.length / 2;
    const apex = add(piece.start, scale(piece.direction, tangentLength(piece)));
    return [piece.angle < NO_APEX ? { member: member.name, station, point: apex } : spotAt(member, station)];
  });
}

/** The spot of a member at a station. */
export function spotAt(member: MemberGeometry, station: number): Spot {
  const none: Vector3 = { x: 0, y: 0, z: 0 };
  return { member: member.name, station, point: placeAt(member.centreline, station)?.point ?? none };
}

/** The free ends of a member: its start, then its finish. */
export const freeEnds = (member: MemberGeometry): Spot[] => [
  ...(member.start.kind === 'free' ? [spotAt(member, 0)] : []),
  ...(member.finish.kind === 'free' ? [spotAt(member, member.centreline.length)] : []),
];
