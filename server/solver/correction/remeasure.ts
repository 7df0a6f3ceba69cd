import type { Check, FrameGeometry, MemberGeometry, Spot } from '../frame/frame-geometry.ts';
import { hasCorner, tangentLength } from '../geometry/bend-table.ts';
import { placeAt, placeOn, type Centreline } from '../geometry/centreline.ts';
import { add, dot, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { readHoop } from './hoop-readings.ts';

/** Rounding of stations and of points that lie on the line [mm]. */
const NOTHING = 1e-6;

/** A frame with some of its members bent otherwise, piece for piece the same as it was drawn. */
export type Rebent = ReadonlyMap<string, Centreline>;

/**
 * A size of a frame whose members were bent otherwise, centre to centre [mm], as a tape would find it. A hoop's own
 * four sizes are read as they are typed: widths level with the shorter leg's foot, legs to where their lines meet the
 * crossbar's.
 *
 * @returns undefined where the bent tube has no such place any more
 */
export function remeasure(check: Check, drawn: FrameGeometry, rebent: Rebent): number | undefined {
  const hoop = check.from.member === 'hoop' ? rebent.get('hoop') : undefined;
  if (hoop !== undefined) {
    const readings: Readonly<Record<string, number>> | undefined = readHoop(hoop);
    const reading = readings?.[check.key];
    if (reading !== undefined) return reading;
  }
  const from = found(check.from, drawn, rebent);
  const to = found(check.to, drawn, rebent);
  const along = unit(subtract(check.to.point, check.from.point));
  if (from === undefined || to === undefined || along === undefined) return undefined;
  if (!from.beside && !to.beside) return length(subtract(to.after, from.after));
  // measured square to something: the part along the size counts, and what stood off the tube goes along
  const moved = dot(along, subtract(subtract(to.after, to.before), subtract(from.after, from.before)));
  return length(subtract(check.to.point, check.from.point)) + moved;
}

/** A spot before and after, both on the tube or both at a corner; `beside`: it was neither. */
type Found = { readonly before: Vector3; readonly after: Vector3; readonly beside: boolean };

function found(spot: Spot, drawn: FrameGeometry, rebent: Rebent): Found | undefined {
  const member = drawn.members.find(({ name }) => name === spot.member);
  const line = rebent.get(spot.member);
  if (member === undefined) return undefined;
  if (line === undefined) return { before: spot.point, after: spot.point, beside: false };
  const on = placeAt(member.centreline, spot.station)?.point;
  if (on === undefined) return undefined;
  const place = placeOf(member, spot.station);
  if (place === undefined) return undefined;
  if (length(subtract(spot.point, on)) > NOTHING) {
    const corner = cornerAfter(member.centreline, line, place.index);
    if (corner !== undefined && length(subtract(corner.before, spot.point)) < NOTHING)
      return { ...corner, beside: false };
    const after = stationAfter(member.centreline, line, place);
    return after === undefined ? undefined : { before: on, after, beside: true };
  }
  const after = stationAfter(member.centreline, line, place);
  return after === undefined ? undefined : { before: spot.point, after, beside: false };
}

type PieceAndOffset = { readonly index: number; readonly offset: number };

/** The piece that a station lies on, and how far along it; where two meet, the one before. */
function placeOf({ centreline }: MemberGeometry, station: number): PieceAndOffset | undefined {
  let begin = 0;
  for (const [index, piece] of centreline.pieces.entries()) {
    if (station <= begin + piece.length + NOTHING) return { index, offset: station - begin };
    begin += piece.length;
  }
  return undefined;
}

/** The same place of the piece after bending: from its start, but from the end of the last piece, where the foot is. */
function stationAfter(before: Centreline, after: Centreline, { index, offset }: PieceAndOffset): Vector3 | undefined {
  const was = before.pieces[index];
  const is = after.pieces[index];
  if (was === undefined || is === undefined) return undefined;
  const atEnd = Math.abs(offset - was.length) <= NOTHING || index === before.pieces.length - 1;
  if (was.kind === 'arc') return placeOn(is, (offset / was.length) * is.length).point;
  return placeOn(is, atEnd ? is.length - (was.length - offset) : offset).point;
}

/** The corner of an arc, or of the one that begins where the piece ends: start + R tan(θ/2) along it, before and after. */
function cornerAfter(before: Centreline, after: Centreline, index: number): Omit<Found, 'beside'> | undefined {
  for (const at of [index, index + 1]) {
    const was = before.pieces[at];
    const is = after.pieces[at];
    if (was?.kind !== 'arc' || is?.kind !== 'arc' || !hasCorner(was)) continue;
    const corner = (arc: typeof was): Vector3 => add(arc.start, scale(arc.direction, tangentLength(arc)));
    return { before: corner(was), after: corner(is) };
  }
  return undefined;
}

/** Whether a tube that was bent otherwise still has every straight and every arc. */
export const canBe = ({ pieces }: Centreline): boolean => pieces.every((piece) => piece.length > -NOTHING);
