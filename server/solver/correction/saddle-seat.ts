import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { keptPlace, keptStation } from '../geometry/kept-place.ts';
import { turnAbout, turned, type RigidMotion } from '../geometry/rigid-motion.ts';
import { add, angleBetween, cross, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';

/** A tube that sits on others is set out from their free ends, or from the bends next to it. */
export type SetFrom = 'ends' | 'bends';

/** All members as drawn and as they are now. */
export type BothFrames = {
  readonly was: ReadonlyMap<string, MemberGeometry>;
  readonly now: ReadonlyMap<string, MemberGeometry>;
  readonly setFrom: SetFrom;
};

/** Where an end sits now [mm]. */
export type Seat = {
  readonly onto: string;
  readonly station: number;
  /** How much further from its bend than drawn; null where it stands on no end of its partner. */
  readonly drift: number | null;
  readonly point: Vector3;
  /** How the partner has moved there. */
  readonly motion: RigidMotion;
};

/**
 * Where the end of a member sits on its partner as that is now; what stood off the partner's axis goes along.
 *
 * @param level seat of the other end, laid before: on the same partner both stay level with each other
 */
export function seatOf(
  old: MemberGeometry,
  side: 'start' | 'finish',
  { was, now, setFrom }: BothFrames,
  level?: Seat,
): Seat | undefined {
  const end = old[side];
  if (end.kind !== 'saddle') return undefined;
  const [drawn, partner] = [was.get(end.onto), now.get(end.onto)];
  if (drawn === undefined || partner === undefined) return undefined;
  const shared = level?.onto === end.onto ? level.drift : null;
  const { station, drift } = stationNow(drawn, partner.centreline, end.station, setFrom === 'bends' ? 0 : shared);
  const before = placeAt(drawn.centreline, end.station);
  const after = placeAt(partner.centreline, station);
  const own = placeAt(old.centreline, side === 'start' ? 0 : old.centreline.length)?.point;
  if (before === undefined || after === undefined || own === undefined) return undefined;
  const shift = subtract(after.point, before.point);
  const motion = turnAbout(before.point, turnOnto(before.tangent, after.tangent), shift);
  const point = add(after.point, turned(motion, subtract(own, before.point)));
  return { onto: end.onto, station, drift, point, motion };
}

/** The rotation vector that turns one unit direction onto another the short way. */
export function turnOnto(from: Vector3, to: Vector3): Vector3 {
  const axis = unit(cross(from, to));
  return axis === undefined ? { x: 0, y: 0, z: 0 } : scale(axis, angleBetween(from, to));
}

/** A saddle end as it sits now. */
export function endOn(end: EndGeometry, seat: Seat | undefined, along: Vector3, { now }: BothFrames): EndGeometry {
  if (end.kind !== 'saddle' || seat === undefined) return end;
  const partner = now.get(end.onto);
  const main = partner === undefined ? undefined : placeAt(partner.centreline, seat.station)?.tangent;
  const between = main === undefined ? end.axisAngle : angleBetween(main, along);
  const axisAngle = Math.min(between, Math.PI - between);
  return { kind: 'saddle', onto: end.onto, station: seat.station, axisAngle, offset: end.offset };
}

/**
 * A seat keeps its place on its partner. On the first or the last straight of that it can stand as much further from the
 * bend as is asked instead.
 */
function stationNow(
  drawn: MemberGeometry,
  partner: Centreline,
  station: number,
  asked: number | null,
): { station: number; drift: number | null } {
  const place = keptPlace(drawn.centreline, station);
  if (place === undefined) return { station, drift: null };
  const { piece, by } = place;
  const kept = keptStation(place, partner);
  if (by === 'share' || drawn.closed || drawn.centreline.pieces.length === 1) return { station: kept, drift: null };
  const grown = (partner.pieces[piece]?.length ?? 0) - (drawn.centreline.pieces[piece]?.length ?? 0);
  const drift = asked ?? grown;
  return { station: by === 'from-start' ? kept + grown - drift : kept + drift - grown, drift };
}
