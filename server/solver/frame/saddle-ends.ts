import type { Member } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { closestStation } from '../geometry/closest-station.ts';
import { reverseCentreline } from '../geometry/reverse-centreline.ts';
import { add, angleBetween, dot, length, scale, subtract, type Vector3 } from '../geometry/vector.ts';
import type { EndGeometry } from './frame-geometry.ts';
import type { ShapeContext } from './shape-context.ts';

type Side = 'start' | 'finish';

/** A member's end as it sits: its centreline run on, or back, to where the two axes pass nearest. */
type Seated = { readonly centreline: Centreline; readonly end: EndGeometry; readonly findings: readonly Finding[] };

/** Steps in which an end is run to a curved partner's axis; a straight partner takes one. */
const MOST_STEPS = 30;
/** The end stands where the axes pass nearest when it moves by no more than this share of the outside diameter. */
const SETTLED = 1e-12;
/** Axes nearer to parallel than this pass nearest far away: the end then stays where it was typed [rad]; about 6°. */
const LEAST_ANGLE = 0.1;

/**
 * Seats one end of a member on its partner.
 *
 * @param lines centrelines by name of all members, as typed
 * @param field JSON pointer of the end
 */
export function seatEnd(
  member: Member,
  side: Side,
  own: Centreline,
  lines: ReadonlyMap<string, Centreline>,
  context: ShapeContext,
  field: string,
): Seated {
  const typed = member[side];
  if (typed.end === 'free') return { centreline: own, end: { kind: 'free' }, findings: [] };
  const { onto } = typed;
  const stop = (found: Finding): Seated => ({ centreline: own, end: { kind: 'free' }, findings: [found] });
  const partner = onto === member.name ? undefined : lines.get(onto);
  if (partner === undefined)
    return stop(finding('saddle-partner-missing', 'stop', `${field}/onto`, { onto, member: member.name }));
  const at = endOf(own, side);
  const near = closestStation(partner, at.point);
  const high = context.outsideDiameter / 2;
  if (near === undefined || near.distance > high) {
    const value = near?.distance ?? 0;
    return stop(finding('saddle-end-off-partner', 'stop', field, { onto, member: member.name, value, high }));
  }
  const centreline = runTo(own, side, partner, context.outsideDiameter);
  const end = endOf(centreline, side);
  const seat = closestStation(partner, end.point) ?? near;
  const main = placeAt(partner, seat.station)?.tangent ?? end.away;
  const between = angleBetween(end.away, main);
  return {
    centreline,
    end: {
      kind: 'saddle',
      onto,
      station: seat.station,
      axisAngle: Math.min(between, Math.PI - between),
      offset: seat.distance,
    },
    findings: [],
  };
}

/** Where an end is, and the way from it into the member. */
function endOf(line: Centreline, side: Side): { point: Vector3; away: Vector3 } {
  const place = placeAt(line, side === 'start' ? 0 : line.length);
  const none: Vector3 = { x: 0, y: 0, z: 0 };
  if (place === undefined) return { point: none, away: none };
  return { point: place.point, away: side === 'start' ? place.tangent : scale(place.tangent, -1) };
}

/** Lengthens or shortens the last straight to where the two axes pass nearest; an end on an arc stays. */
function runTo(own: Centreline, side: Side, partner: Centreline, outsideDiameter: number): Centreline {
  if (side === 'finish') return reverseCentreline(runTo(reverseCentreline(own), 'start', partner, outsideDiameter));
  const [first, ...rest] = own.pieces;
  if (first?.kind !== 'straight') return own;
  const outward = scale(first.direction, -1);
  let out = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const point = add(first.start, scale(outward, out));
    const near = closestStation(partner, point);
    const main = near === undefined ? undefined : placeAt(partner, near.station)?.tangent;
    if (near === undefined || main === undefined) return own;
    const cosine = dot(outward, main);
    if (1 - cosine ** 2 < Math.sin(LEAST_ANGLE) ** 2) return own;
    // nearest approach of the two lines, along the member's own
    const gap = subtract(near.point, point);
    const move = (dot(gap, outward) - dot(gap, main) * cosine) / (1 - cosine ** 2);
    out += move;
    if (Math.abs(out) > outsideDiameter / Math.sin(LEAST_ANGLE) || first.length + out <= 0) return own;
    if (Math.abs(move) <= SETTLED * outsideDiameter) break;
  }
  const start = add(first.start, scale(outward, out));
  const longer = { ...first, start, length: length(subtract(start, first.start)) * Math.sign(out) + first.length };
  return { pieces: [longer, ...rest], length: own.length - first.length + longer.length };
}
