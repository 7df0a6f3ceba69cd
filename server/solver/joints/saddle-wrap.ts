import type { WrapTemplate } from '../../plan/frame.ts';
import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt, type ArcPiece } from '../geometry/centreline.ts';
import { arcCentre } from '../geometry/slice.ts';
import { add, angleBetween, cross, dot, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { outsideAt } from './outside.ts';
import { LEAST_AXIS_ANGLE, saddleOrdinate } from './saddle-cut.ts';
import { wrapTemplate, type Ordinates, type WrapFrame } from './wrap.ts';

/** A point by the branch: along it from its end, towards the saddle's acute side, and a quarter turn on [mm]. */
export type BranchPoint = { readonly along: number; readonly acute: number; readonly quarter: number };

/**
 * How a member's end meets its partner: angle between the axes, offset of the member's axis along the quarter-turn
 * generator of the saddle [mm], and the member's generator (from its outside) that is the saddle's acute side [rad].
 * `distance` from the axis of a partner that is curved there [mm]; null where the partner is straight.
 */
export type SaddleSeat = {
  readonly axisAngle: number;
  readonly offset: number;
  readonly acute: number;
  readonly distance: ((point: BranchPoint) => number) | null;
};

/** A seat as read from two members, with its acute side: a unit vector square to the member. */
export type ReadSeat = SaddleSeat & { readonly acuteSide: Vector3 };

/** A saddle's wrap; what is nearest to the partner's axis and the mean of the cut, both along the member [mm]. */
export type SaddleWrap = { readonly template: WrapTemplate; readonly throat: number; readonly mean: number };

/** Offsets below this are rounding [mm]. */
const NO_OFFSET = 1e-6;

/**
 * Reads the seat from where the two members stand. A member that is itself curved there is taken along its tangent.
 *
 * @returns undefined where the axes are too nearly parallel or a member has no pieces
 */
export function saddleSeat(
  member: MemberGeometry,
  at: { readonly end: 'start' | 'finish'; readonly seat: Extract<EndGeometry, { kind: 'saddle' }> },
  partner: MemberGeometry,
  middle: Vector3 | null,
): ReadSeat | undefined {
  const station = at.end === 'start' ? 0 : member.centreline.length;
  const here = placeAt(member.centreline, station);
  const there = placeAt(partner.centreline, at.seat.station);
  if (here === undefined || there === undefined) return undefined;
  const away = at.end === 'start' ? here.tangent : scale(here.tangent, -1);
  const main = dot(away, there.tangent) < 0 ? scale(there.tangent, -1) : there.tangent;
  const axisAngle = angleBetween(away, main);
  const acuteSide = unit(subtract(main, scale(away, dot(away, main))));
  if (acuteSide === undefined || axisAngle < LEAST_AXIS_ANGLE) return undefined;
  const offset = dot(subtract(here.point, there.point), cross(away, acuteSide));
  const outside = outsideAt(member, station, middle) ?? acuteSide;
  const quarter = cross(here.tangent, outside);
  return {
    axisAngle,
    offset: Math.abs(offset) < NO_OFFSET ? 0 : offset,
    acute: Math.atan2(dot(acuteSide, quarter), dot(acuteSide, outside)),
    acuteSide,
    distance:
      there.piece.kind === 'arc'
        ? distanceToArc(there.piece, { point: here.point, away, acuteSide, quarter: cross(away, acuteSide) })
        : null,
  };
}

/** Distance from an arc's centreline, carried on round its circle, for points given by the branch. */
function distanceToArc(
  arc: ArcPiece,
  branch: { point: Vector3; away: Vector3; acuteSide: Vector3; quarter: Vector3 },
): (point: BranchPoint) => number {
  const centre = arcCentre(arc);
  return ({ along, acute, quarter }) => {
    const across = add(scale(branch.acuteSide, acute), scale(branch.quarter, quarter));
    const from = subtract(add(add(branch.point, scale(branch.away, along)), across), centre);
    const height = dot(from, arc.normal);
    return Math.hypot(length(subtract(from, scale(arc.normal, height))) - arc.radius, height);
  };
}

/** Where a generator comes out of a curved partner: the straight partner's ordinate, mended by secant steps. */
function ordinateOnArc(first: number, clearance: (along: number) => number): number | undefined {
  let [before, here] = [first + 1, first];
  let clearBefore = clearance(before);
  // 40 steps: a saddle that is not found by then grazes the partner or misses it
  for (let step = 0; step < 40; step += 1) {
    const clear = clearance(here);
    if (Math.abs(clear) < 1e-9) return here;
    const next = here - (clear * (here - before)) / (clear - clearBefore);
    if (!Number.isFinite(next)) return undefined;
    [before, clearBefore, here] = [here, clear, next];
  }
  return undefined;
}

/** Ordinate of one generator of the member's surface [mm]; undefined where it misses the partner. */
const reach = (seat: Seated, radius: number, generator: number): number | undefined =>
  // at a finish the branch runs against the member, so angles round it run the other way
  saddleReach(seat, radius, (seat.end === 'start' ? 1 : -1) * (generator - seat.acute));

/**
 * How far along the branch, from its end on its axis, a line beside its axis comes out of the partner [mm].
 *
 * @param radius of the line from the axis [mm]
 * @param turned its angle from the acute side, a quarter turn at (away × acute side) [rad]
 */
export function saddleReach(seat: Omit<Seated, 'acute' | 'end'>, radius: number, turned: number): number | undefined {
  const { mainRadius, offset, axisAngle, distance } = seat;
  const straight = saddleOrdinate({ mainRadius, offset, axisAngle, radius, generator: turned });
  if (distance === null) return straight;
  const [acute, quarter] = [radius * Math.cos(turned), radius * Math.sin(turned)];
  const side = (acute * Math.cos(axisAngle)) / Math.sin(axisAngle);
  return ordinateOnArc(straight ?? side, (along) => distance({ along, acute, quarter }) - mainRadius);
}

/** A seat with the end of the member that it is at, and the partner's outer radius [mm]. */
export type Seated = SaddleSeat & { readonly end: 'start' | 'finish'; readonly mainRadius: number };

/**
 * The wrap of a saddle. The ring (ordinate 0) is where the two axes meet; ordinates count towards the far end of the
 * member, so they are negative at a finish. A cut that goes radially through the wall must leave no metal inside the
 * partner, so the line to cut to is the further of the outer and the inner one; where the outer surface misses the
 * partner, the inner one alone.
 *
 * @returns undefined where the inner surface misses the partner somewhere
 */
export function saddleWrap(frame: WrapFrame, seat: Seated): SaddleWrap | undefined {
  const outside = frame.tube.outsideDiameter / 2;
  const inside = outside - frame.tube.wall;
  const sign = seat.end === 'start' ? 1 : -1;
  let missed = false;
  const template = wrapTemplate(frame, 'saddle', (generator): Ordinates => {
    const inner = reach(seat, inside, generator);
    if (inner === undefined) missed = true;
    const outer = reach(seat, outside, generator) ?? inner ?? 0;
    return { outer: sign * outer, inner: sign * (inner ?? 0), cut: sign * Math.max(outer, inner ?? 0), second: null };
  });
  if (missed) return undefined;
  // the first point of the curve is the last one again
  const round = template.curve.slice(1).map(([, ordinate]) => sign * ordinate);
  const mean = round.reduce((sum, ordinate) => sum + ordinate, 0) / round.length;
  return { template, throat: seat.end === 'start' ? template.low : -template.high, mean };
}
