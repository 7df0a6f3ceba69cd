import type { WrapTemplate } from '../../plan/frame.ts';
import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt, type ArcPiece } from '../geometry/centreline.ts';
import { arcCentre } from '../geometry/slice.ts';
import { add, angleBetween, cross, dot, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { contactNear, firstContact, type Clearance } from './first-contact.ts';
import { outsideAt } from './outside.ts';
import { LEAST_AXIS_ANGLE, saddleOrdinate } from './saddle-cut.ts';
import { wrapTemplate, type Ordinates, type WrapFrame } from './wrap.ts';

/** A line beside the branch's axis: off it towards the saddle's acute side, and a quarter turn on [mm]. */
export type BranchLine = { readonly acute: number; readonly quarter: number };

/**
 * How a member's end meets its partner: angle between the axes, offset of the member's axis along the quarter-turn
 * generator of the saddle [mm], and the member's generator (from its outside) that is the saddle's acute side [rad].
 * `distance` from the axis of a partner that is curved there [mm], for a place along a line beside the branch; null where
 * the partner is straight.
 */
export type SaddleSeat = {
  readonly axisAngle: number;
  readonly offset: number;
  readonly acute: number;
  readonly distance: ((line: BranchLine) => Clearance) | null;
  /** How far along the branch it comes from towards a curved partner [mm]: it is clear of it there. Infinity: from anywhere. */
  readonly far: number;
  /** Where a line is known to come out, near enough to be mended by secant steps; left out: nobody knows. */
  readonly known?: (radius: number, turned: number) => number | undefined;
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
  const { piece } = there;
  const branch = { point: here.point, away, acuteSide, quarter: cross(away, acuteSide) };
  return {
    axisAngle,
    offset: Math.abs(offset) < NO_OFFSET ? 0 : offset,
    acute: Math.atan2(dot(acuteSide, quarter), dot(acuteSide, outside)),
    acuteSide,
    distance: piece.kind === 'arc' ? distanceToArc(piece, branch) : null,
    far: piece.kind === 'arc' ? halfwayAcross(piece, branch) : Infinity,
  };
}

type Branch = {
  readonly point: Vector3;
  readonly away: Vector3;
  readonly acuteSide: Vector3;
  readonly quarter: Vector3;
};

/** Distance from an arc's centreline, carried on round its circle, along lines beside the branch. */
function distanceToArc(arc: ArcPiece, branch: Branch): (line: BranchLine) => Clearance {
  const centre = arcCentre(arc);
  return ({ acute, quarter }) => {
    const across = add(scale(branch.acuteSide, acute), scale(branch.quarter, quarter));
    const begin = subtract(add(branch.point, across), centre);
    return (along) => {
      const from = add(begin, scale(branch.away, along));
      const height = dot(from, arc.normal);
      return Math.hypot(length(subtract(from, scale(arc.normal, height))) - arc.radius, height);
    };
  };
}

/**
 * Where a branch on the inner side of a bend is nearest to the middle of its circle [mm along it]: further out it comes to
 * the other side of it. Infinity on the outer side, from which the bend goes away.
 */
function halfwayAcross(arc: ArcPiece, { point, away }: Branch): number {
  const inPlane = subtract(away, scale(arc.normal, dot(away, arc.normal)));
  const halfway = dot(subtract(arcCentre(arc), point), inPlane) / dot(inPlane, inPlane);
  return halfway > 0 ? halfway : Infinity;
}

/**
 * Ordinates of generators of one of the member's surfaces [mm], one after the other: the one before tells about where the
 * next is. Undefined where one misses the partner.
 */
function follower(seat: Seated, radius: number): (generator: number) => number | undefined {
  // at a finish the branch runs against the member, so angles round it run the other way
  const sign = seat.end === 'start' ? 1 : -1;
  let before: number | undefined;
  return (generator) => {
    const turned = sign * (generator - seat.acute);
    before = saddleReach(seat, radius, turned, seat.known?.(radius, turned) ?? before);
    return before;
  };
}

/** A curve that is further open than this where it comes round to its beginning is none [mm]: rounding is far below. */
const OPEN = 1e-3;

/**
 * A saddle's lines come out of a partner that bends towards the branch no further than this many times (r + R) / sin β from
 * where the axes meet: at the turning point of a parabola twice as far as out of a straight one. Derived, a tenth to spare.
 */
const FURTHEST = 2.2;

/** Shares of the partner's radius [–]: the shortest step towards it, and how far off a known contact may be; our own choice. */
export const LEAST_STEP = 1 / 200;
const KNOWN_WITHIN = 1 / 4;

/**
 * How far along the branch, from its end on its axis, a line beside its axis first meets the partner that comes from the
 * branch's far side [mm].
 *
 * @param radius of the line from the axis [mm]
 * @param turned its angle from the acute side, a quarter turn at (away × acute side) [rad]
 * @param known about where that is, so that it is found sooner
 * @returns undefined where the line misses the partner, or is not clear of it where it comes from
 */
export function saddleReach(
  seat: Omit<Seated, 'acute' | 'end'>,
  radius: number,
  turned: number,
  known = seat.known?.(radius, turned),
): number | undefined {
  const { mainRadius, offset, axisAngle, distance } = seat;
  if (distance === null) return saddleOrdinate({ mainRadius, offset, axisAngle, radius, generator: turned });
  const from = distance({ acute: radius * Math.cos(turned), quarter: radius * Math.sin(turned) });
  const clearance = (along: number): number => from(along) - mainRadius;
  const near = known === undefined ? undefined : contactNear(clearance, known, KNOWN_WITHIN * mainRadius);
  return near ?? firstContact(clearance, { ...rangeOf(seat, radius), least: LEAST_STEP * mainRadius });
}

/** Between which places along the branch its saddle lies [mm]. */
export function rangeOf(
  { axisAngle, mainRadius, far }: Pick<Seated, 'axisAngle' | 'mainRadius' | 'far'>,
  radius: number,
): { readonly far: number; readonly near: number } {
  const furthest = (FURTHEST * (radius + mainRadius)) / Math.sin(axisAngle);
  return { far: Math.min(far, furthest), near: -furthest };
}

/** A seat with the end of the member that it is at, and the partner's outer radius [mm]. */
export type Seated = SaddleSeat & { readonly end: 'start' | 'finish'; readonly mainRadius: number };

/**
 * The wrap of a saddle. The ring (ordinate 0) is where the two axes meet; ordinates count towards the far end of the
 * member, so they are negative at a finish. A cut that goes radially through the wall must leave no metal inside the
 * partner, so the line to cut to is the further of the outer and the inner one; where the outer surface misses the
 * partner, the inner one alone.
 *
 * @returns undefined where the inner surface misses the partner somewhere, or the cut does not come round to its beginning
 */
export function saddleWrap(frame: WrapFrame, seat: Seated): SaddleWrap | undefined {
  const outside = frame.tube.outsideDiameter / 2;
  const reach = { outer: follower(seat, outside), inner: follower(seat, outside - frame.tube.wall) };
  const sign = seat.end === 'start' ? 1 : -1;
  let missed = false;
  const template = wrapTemplate(frame, 'saddle', (generator): Ordinates => {
    const inner = reach.inner(generator);
    if (inner === undefined) missed = true;
    const outer = reach.outer(generator) ?? inner ?? 0;
    return { outer: sign * outer, inner: sign * (inner ?? 0), cut: sign * Math.max(outer, inner ?? 0), second: null };
  });
  const { curve } = template;
  const open = Math.abs((curve[0]?.[1] ?? 0) - (curve.at(-1)?.[1] ?? 0));
  if (missed || open > OPEN) return undefined;
  // the first point of the curve is the last one again
  const round = curve.slice(1).map(([, ordinate]) => sign * ordinate);
  const mean = round.reduce((sum, ordinate) => sum + ordinate, 0) / round.length;
  return { template, throat: seat.end === 'start' ? template.low : -template.high, mean };
}
