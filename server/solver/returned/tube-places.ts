import type { TubePlace } from '../../job/tube-place.ts';
import type { FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import { hasCorner, tangentLength } from '../geometry/bend-table.ts';
import {
  isDieBend,
  placeAt,
  placeOn,
  type ArcPiece,
  type Centreline,
  type Piece,
  type Place as PlaceOnLine,
} from '../geometry/centreline.ts';
import { alongPiece, keptPlace, keptStation, type KeptPlace } from '../geometry/kept-place.ts';
import { pieceEnd } from '../geometry/slice.ts';
import { add, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import type { Lines, Side } from './lines.ts';

/** Rounding of stations and of points that lie on the line [mm]. */
const NOTHING = 1e-6;

/** A place that keeps its meaning when the tube is bent otherwise: on a piece, or the corner of an arc. */
export type Place = {
  readonly member: number;
  readonly piece: number;
  readonly by: 'corner' | KeptPlace['by'];
  readonly amount: number;
  /** The tube ends here: a tape finds the edge of the cut. */
  readonly cut: boolean;
};

/** The place that a person typed; undefined where the wanted frame has no such member, bend or piece. */
export function placeTyped(wanted: FrameGeometry, typed: TubePlace): Place | undefined {
  const member = wanted.members.findIndex(({ name }) => name === typed.member);
  const line = wanted.members[member]?.centreline;
  if (line === undefined) return undefined;
  const last = line.pieces.length - 1;
  const closed = wanted.members[member]?.closed === true;
  const on = (piece: number, by: Place['by'], amount: number, cut = false): Place => ({
    member,
    piece,
    by,
    amount,
    cut,
  });
  switch (typed.spot) {
    case 'start':
      return on(0, 'from-start', 0, !closed);
    case 'finish':
      return on(last, 'from-end', 0, !closed);
    case 'middle':
      return typed.number - 1 > last ? undefined : on(typed.number - 1, 'share', 0.5);
    case 'along':
      return typed.distance > line.length + NOTHING ? undefined : placeAtStation(wanted, member, typed.distance);
    case 'corner':
    case 'bend-start':
    case 'bend-end': {
      const piece = dieBend(line, typed.number);
      if (piece === undefined) return undefined;
      if (typed.spot === 'corner') return hasCorner(piece.arc) ? on(piece.index, 'corner', 0) : undefined;
      return on(piece.index, 'share', typed.spot === 'bend-start' ? 0 : 1);
    }
  }
}

function dieBend(line: Centreline, number: number): { index: number; arc: ArcPiece } | undefined {
  let count = 0;
  for (const [index, arc] of line.pieces.entries()) {
    if (!isDieBend(arc)) continue;
    count += 1;
    if (count === number) return { index, arc };
  }
  return undefined;
}

/** The place at a station of the wanted frame, kept as a person with a tape means it. */
export function placeAtStation(wanted: FrameGeometry, member: number, station: number): Place | undefined {
  const own = wanted.members[member];
  const kept = own === undefined ? undefined : keptPlace(own.centreline, station);
  if (own === undefined || kept === undefined) return undefined;
  const cut = !own.closed && (station <= NOTHING || station >= own.centreline.length - NOTHING);
  return { member, piece: kept.piece, by: kept.by, amount: kept.amount, cut };
}

/** The place of a spot of the wanted frame: on the tube, or a corner; undefined where it stands beside both. */
export function placeOfSpot(wanted: FrameGeometry, spot: Spot): Place | undefined {
  const member = wanted.members.findIndex(({ name }) => name === spot.member);
  const line = wanted.members[member]?.centreline;
  const on = line === undefined ? undefined : placeAt(line, spot.station)?.point;
  if (line === undefined || on === undefined) return undefined;
  if (length(subtract(on, spot.point)) <= NOTHING) return placeAtStation(wanted, member, spot.station);
  const piece = line.pieces.findIndex(
    (arc) => arc.kind === 'arc' && hasCorner(arc) && length(subtract(apexOf(arc), spot.point)) <= NOTHING,
  );
  return piece < 0 ? undefined : { member, piece, by: 'corner', amount: 0, cut: false };
}

const apexOf = (arc: ArcPiece): Vector3 => add(arc.start, scale(arc.direction, tangentLength(arc)));

/** The place on the piece that it is kept on: a corner as the middle of its arc. */
const onPiece = ({ piece, by, amount }: Place): KeptPlace =>
  by === 'corner' ? { piece, by: 'share', amount: 1 / 2 } : { piece, by, amount };

const pieceOf = (place: Place, lines: Lines): Piece | undefined => lines[place.member]?.pieces[place.piece];

/** Where the tube is and goes at a place; a distance that is longer than its straight now runs on into the bend. */
function standsAt(place: Place, lines: Lines): PlaceOnLine | undefined {
  const line = lines[place.member];
  const piece = line?.pieces[place.piece];
  if (line === undefined || piece === undefined) return undefined;
  const along = alongPiece(onPiece(place), piece);
  const beyond = place.by === 'from-start' ? along > piece.length : place.by === 'from-end' && along < 0;
  return beyond ? placeAt(line, stationOf(place, line)) : placeOn(piece, along);
}

export function pointOf(place: Place, lines: Lines): Vector3 | undefined {
  if (place.by !== 'corner') return standsAt(place, lines)?.point;
  const piece = pieceOf(place, lines);
  return piece?.kind === 'arc' ? apexOf(piece) : undefined;
}

/** Which way the tube goes there, from start to finish; at a corner, in the middle of its arc. */
export const tangentOf = (place: Place, lines: Lines): Vector3 | undefined => standsAt(place, lines)?.tangent;

/** Station of a place on a line [mm]. */
export const stationOf = (place: Place, line: Centreline): number => keptStation(onPiece(place), line);

/** From the apex on the centreline to the outer apex: r / cos(θ/2) along the outward bisector. Derived. */
function outward(arc: ArcPiece, radius: number): Vector3 | undefined {
  const after = pieceEnd(arc).tangent;
  const bisector = unit(subtract(arc.direction, after));
  return bisector === undefined ? undefined : scale(bisector, radius / Math.cos(arc.angle / 2));
}

/** The corner on the centreline, or on the outside or the inside of the tube. */
export function cornerOnSide(place: Place, lines: Lines, radius: number, side: Side): Vector3 | undefined {
  const piece = pieceOf(place, lines);
  if (piece?.kind !== 'arc') return undefined;
  const out = outward(piece, radius);
  return out === undefined ? undefined : add(apexOf(piece), scale(out, side));
}

/**
 * How far the tube reaches beyond a place along a line that leaves it by `away` [mm]. On the tube: r / sin φ, where the
 * line that crosses the axis by φ leaves the tube. At a cut end: r sin φ, the edge of the cut seen along the line. At a
 * corner: the outer apex seen along the line, so that a straight leg grows by r tan(θ/2) as a typed length does.
 * Derived.
 *
 * @param radius of the outside of the tube [mm]
 */
export function reachBeyond(place: Place, lines: Lines, away: Vector3, radius: number): number | undefined {
  const piece = pieceOf(place, lines);
  const tangent = tangentOf(place, lines);
  if (piece === undefined || tangent === undefined) return undefined;
  if (place.by === 'corner') {
    const out = piece.kind === 'arc' ? outward(piece, radius) : undefined;
    return out === undefined ? undefined : Math.abs(out.x * away.x + out.y * away.y + out.z * away.z);
  }
  const cosine = tangent.x * away.x + tangent.y * away.y + tangent.z * away.z;
  const sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
  if (place.cut) return radius * sine;
  return sine < LEAST_SINE ? undefined : radius / sine;
}

/** Nearer along the tube than this a line has no outside or inside to end at: about 15°; our own choice. */
const LEAST_SINE = 0.26;
