import type { Check, EndGeometry, FrameGeometry, MemberGeometry, Spot } from '../frame/frame-geometry.ts';
import { planeOf } from '../frame/plane-of.ts';
import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { closestStation } from '../geometry/closest-station.ts';
import type { Closing } from '../geometry/path-through.ts';
import { bestMotion } from '../geometry/rigid-motion.ts';
import { angleBetween } from '../geometry/vector.ts';
import { movedLine } from '../geometry/moved-centreline.ts';
import type { Lines } from './lines.ts';
import type { Size } from './sizes.ts';
import { placeAtStation, placeOfSpot, pointOf, stationOf, type Place } from './tube-places.ts';

/** What is looked up once for a wanted frame, so that many frames like it can be made. */
export type FrameMaker = (lines: Lines, flat: boolean) => FrameGeometry;

type Placed = { readonly spot: Spot; readonly place: Place | undefined };

/**
 * Makes whole frames out of lines with the pieces of the wanted frame: laid on it as well as it goes by feet and
 * corners, with every spot, seat and size where it is now.
 */
export function frameMaker(wanted: FrameGeometry, sizes: readonly Size[]): FrameMaker {
  const placed = (spot: Spot): Placed => ({ spot, place: placeOfSpot(wanted, spot) });
  const feet = wanted.feet.map(placed);
  const corners = wanted.corners.map(placed);
  const stations = (spot: Spot) => {
    const member = wanted.members.findIndex(({ name }) => name === spot.member);
    const place = placeAtStation(wanted, member, spot.station);
    return (lines: Lines): number => {
      const line = lines[member];
      return place === undefined || line === undefined ? spot.station : stationOf(place, line);
    };
  };
  const checks = sizes.map((size) => ({ size, from: stations(size.check.from), to: stations(size.check.to) }));
  return (free, flat) => {
    const pairs = [...feet, ...corners].flatMap(({ spot, place }) => {
      const from = place === undefined ? undefined : pointOf(place, free);
      return from === undefined ? [] : [{ from, to: spot.point, weight: 1 }];
    });
    const motion = bestMotion(pairs, flat ? wanted.planeNormal : null);
    const lines = free.map((line) => movedLine(motion, line));
    const now = ({ spot, place }: Placed): Spot => {
      const line = place === undefined ? undefined : lines[place.member];
      const point = place === undefined ? undefined : pointOf(place, lines);
      if (place === undefined || line === undefined || point === undefined) return spot;
      return { member: spot.member, station: stationOf(place, line), point };
    };
    const members = wanted.members.map((member, index) => memberNow(member, index, wanted, lines));
    return {
      members,
      checks: checks.map(({ size, from, to }) => checkNow(size, lines, { from, to })),
      feet: feet.map(now),
      corners: corners.map(now),
      planeNormal: flat ? wanted.planeNormal : planeOf(members),
    };
  };
}

/** A size where it is now, with what its references add there. */
function checkNow(
  size: Size,
  lines: Lines,
  at: { from: (lines: Lines) => number; to: (lines: Lines) => number },
): Check {
  const { check } = size;
  const ends = size.ends(lines);
  if (ends === undefined) return check;
  const [centre, outside, inside] = ([0, 1, -1] as const).map((side) => size.value(lines, side));
  return {
    key: check.key,
    index: check.index,
    field: check.field,
    reference: check.reference,
    outsideExtra: centre === undefined || outside === undefined ? check.outsideExtra : outside - centre,
    insideExtra: centre === undefined || inside === undefined ? check.insideExtra : inside - centre,
    bothEnds: check.bothEnds,
    from: { member: check.from.member, station: at.from(lines), point: ends.from },
    to: { member: check.to.member, station: at.to(lines), point: ends.to },
  };
}

function memberNow(member: MemberGeometry, index: number, wanted: FrameGeometry, lines: Lines): MemberGeometry {
  const centreline = lines[index] ?? member.centreline;
  const end = (side: 'start' | 'finish'): EndGeometry => {
    const is = member[side];
    if (is.kind !== 'saddle') return is;
    const partner = lines[wanted.members.findIndex(({ name }) => name === is.onto)];
    return partner === undefined ? is : (seatedNow(is.onto, centreline, side, partner) ?? is);
  };
  return {
    name: member.name,
    centreline,
    closed: member.closed,
    closing: member.closing === null ? null : closingNow(member.closing, centreline),
    start: end('start'),
    finish: end('finish'),
  };
}

function seatedNow(
  onto: string,
  own: Centreline,
  side: 'start' | 'finish',
  partner: Centreline,
): EndGeometry | undefined {
  const place = placeAt(own, side === 'start' ? 0 : own.length);
  const near = place === undefined ? undefined : closestStation(partner, place.point);
  const main = near === undefined ? undefined : placeAt(partner, near.station)?.tangent;
  if (place === undefined || near === undefined || main === undefined) return undefined;
  const between = angleBetween(place.tangent, main);
  return {
    kind: 'saddle',
    onto,
    station: near.station,
    axisAngle: Math.min(between, Math.PI - between),
    offset: near.distance,
  };
}

/** The straights of a closed member as long as they are now; the first is made of both ends. */
function closingNow(closing: Closing, { pieces }: Centreline): Closing {
  const straights = pieces.filter(({ kind }) => kind === 'straight').map(({ length }) => length);
  const [first = 0] = straights;
  const lengths = [first + (straights.at(-1) ?? 0), ...straights.slice(1, -1)];
  const count = closing.straights.length;
  if (lengths.length !== count) return closing;
  const begin = closing.straights.findIndex(({ from }) => from === closing.from);
  return {
    from: closing.from,
    straights: closing.straights.map(({ from, length }, index) => ({
      from,
      length: lengths[(index - begin + count) % count] ?? length,
    })),
  };
}
