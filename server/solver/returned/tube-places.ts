import type { TubePlace } from '../../job/tube-place.ts';
import type { FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import { hasCorner, tangentLength } from '../geometry/bend-table.ts';
import { placeAt, placeOn, type ArcPiece, type Centreline, type Piece } from '../geometry/centreline.ts';
import { pieceEnd } from '../geometry/slice.ts';
import { add, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import type { Lines, Side } from './lines.ts';

/** Rounding of stations and of points that lie on the line [mm]. */
const NOTHING = 1e-6;

/**
 * A place that keeps its meaning when the tube is bent otherwise: the corner of an arc, or a place on a piece, counted
 * from its start [mm], from its end [mm], or as a share of its length.
 */
export type Place = {
  readonly member: number;
  readonly piece: number;
  readonly by: 'corner' | 'from-start' | 'from-end' | 'share';
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
    if (arc.kind !== 'arc' || arc.made !== 'die') continue;
    count += 1;
    if (count === number) return { index, arc };
  }
  return undefined;
}

/**
 * The place at a station of the wanted frame. A tape finds places of the first and the last straight of a tube from its
 * end, all others stay at their share of the piece.
 */
export function placeAtStation(wanted: FrameGeometry, member: number, station: number): Place | undefined {
  const own = wanted.members[member];
  if (own === undefined) return undefined;
  const { pieces } = own.centreline;
  let begin = 0;
  for (const [piece, { kind, length: long }] of pieces.entries()) {
    const end = begin + long;
    const last = piece === pieces.length - 1;
    if (station <= end + NOTHING || last) {
      const cut = !own.closed && (station <= NOTHING || station >= own.centreline.length - NOTHING);
      if (piece === 0 && kind === 'straight' && station < end - NOTHING)
        return { member, piece, by: 'from-start', amount: station, cut };
      if (last && kind === 'straight') return { member, piece, by: 'from-end', amount: end - station, cut };
      return { member, piece, by: 'share', amount: long > 0 ? (station - begin) / long : 0, cut };
    }
    begin = end;
  }
  return undefined;
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

/** From the start of its piece [mm]; of a corner, to the middle of its arc. */
const alongPiece = ({ by, amount }: Place, piece: Piece): number =>
  by === 'from-start'
    ? amount
    : by === 'from-end'
      ? piece.length - amount
      : by === 'share'
        ? amount * piece.length
        : piece.length / 2;

const pieceOf = (place: Place, lines: Lines): Piece | undefined => lines[place.member]?.pieces[place.piece];

export function pointOf(place: Place, lines: Lines): Vector3 | undefined {
  const piece = pieceOf(place, lines);
  if (piece === undefined) return undefined;
  if (place.by === 'corner') return piece.kind === 'arc' ? apexOf(piece) : undefined;
  return placeOn(piece, alongPiece(place, piece)).point;
}

/** Which way the tube goes there, from start to finish; at a corner, in the middle of its arc. */
export function tangentOf(place: Place, lines: Lines): Vector3 | undefined {
  const piece = pieceOf(place, lines);
  return piece === undefined ? undefined : placeOn(piece, alongPiece(place, piece)).tangent;
}

/** Station of a place on a line [mm]. */
export function stationOf(place: Place, line: Centreline): number {
  let begin = 0;
  for (let index = 0; index < place.piece; index += 1) begin += line.pieces[index]?.length ?? 0;
  const piece = line.pieces[place.piece];
  return piece === undefined ? begin : begin + alongPiece(place, piece);
}

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
