import type { TubePlace } from '../../job/tube-place.ts';
import { isDieBend } from '../geometry/centreline.ts';
import { keptPlace, keptStation } from '../geometry/kept-place.ts';
import { pieceStations } from '../geometry/slice.ts';
import { dieCorners, spotAt as spotAtStation } from './die-corners.ts';
import type { FrameGeometry, MemberGeometry, Spot } from './frame-geometry.ts';

/** Rounding of a typed distance that still counts as the end of the member [mm]. */
const ROUNDING = 1e-6;

/**
 * Where a place on a tube is on a frame [mm]: the ends of a member, the tangent points of a die bend, its corner (where
 * the two straights would meet; its middle where they do not; the station is that of the middle), the middle of a piece,
 * or a distance along the member as wanted, which is kept as a person with a tape means it.
 *
 * @param frame the wanted frame, or one with the same members and pieces
 * @param wanted the frame that `along` counts its distance on; left out: `frame` itself
 * @returns undefined where the frame has no such member, bend or piece
 */
export function spotAt(place: TubePlace, frame: FrameGeometry, wanted: FrameGeometry = frame): Spot | undefined {
  const member = memberNamed(frame, place.member);
  if (member === undefined) return undefined;
  switch (place.spot) {
    case 'start':
      return spotAtStation(member, 0);
    case 'finish':
      return spotAtStation(member, member.centreline.length);
    case 'corner':
      return dieCorners(member)[place.number - 1];
    case 'bend-start':
    case 'bend-end': {
      const stations = pieceStations(member.centreline);
      const bend = dieBendPieces(member)[place.number - 1];
      const station = bend === undefined ? undefined : stations[place.spot === 'bend-start' ? bend : bend + 1];
      return station === undefined ? undefined : spotAtStation(member, station);
    }
    case 'middle': {
      const stations = pieceStations(member.centreline);
      const [from, to] = [stations[place.number - 1], stations[place.number]];
      return from === undefined || to === undefined ? undefined : spotAtStation(member, (from + to) / 2);
    }
    case 'along': {
      const counted = memberNamed(wanted, place.member);
      if (counted === undefined || place.distance > counted.centreline.length + ROUNDING) return undefined;
      const kept = keptPlace(counted.centreline, place.distance);
      return kept === undefined ? undefined : spotAtStation(member, keptStation(kept, member.centreline));
    }
  }
}

/** Indices of the pieces of a member that are die bends, in order. */
const dieBendPieces = (member: MemberGeometry): number[] =>
  member.centreline.pieces.flatMap((piece, index) => (isDieBend(piece) ? [index] : []));

const memberNamed = (frame: FrameGeometry, name: string): MemberGeometry | undefined =>
  frame.members.find((member) => member.name === name);
