import type { WrapTemplate } from '../../plan/frame.ts';
import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { angleBetween, cross, dot, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { outsideAt } from './outside.ts';
import { saddleOrdinate } from './saddle-cut.ts';
import { wrapTemplate, type Ordinates, type WrapFrame } from './wrap.ts';

/**
 * How a member's end meets its partner: angle between the axes, offset of the member's axis along the quarter-turn
 * generator of the saddle [mm], and the member's generator (from its outside) that is the saddle's acute side [rad].
 */
export type SaddleSeat = { readonly axisAngle: number; readonly offset: number; readonly acute: number };

/** A saddle's wrap; what is nearest to the partner's axis and the mean of the cut, both along the member [mm]. */
export type SaddleWrap = { readonly template: WrapTemplate; readonly throat: number; readonly mean: number };

/** Saddles flatter than this are not cut with a wrap [rad]: 10°, common practice, no source. */
const LEAST_AXIS_ANGLE = (10 * Math.PI) / 180;
/** Offsets below this are rounding [mm]. */
const NO_OFFSET = 1e-6;

/**
 * Reads the seat from where the two members stand. A partner or a member that is curved there is taken along its
 * tangent, which is exact on straights.
 *
 * @returns undefined where the axes are too nearly parallel or a member has no pieces
 */
export function saddleSeat(
  member: MemberGeometry,
  at: { readonly end: 'start' | 'finish'; readonly seat: Extract<EndGeometry, { kind: 'saddle' }> },
  partner: MemberGeometry,
  middle: Vector3 | null,
): SaddleSeat | undefined {
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
  };
}

/**
 * The wrap of a saddle. The ring (ordinate 0) is where the two axes meet; ordinates count towards the far end of the
 * member, so they are negative at a finish. A cut that goes radially through the wall must leave no metal inside the
 * partner, so the line to cut to is the further of the outer and the inner one. Where the outer surface misses the
 * partner by less than the wall its ordinate is the one at the partner's side.
 *
 * @returns undefined where the inner surface misses the partner too
 */
export function saddleWrap(
  frame: WrapFrame,
  seat: SaddleSeat & { readonly end: 'start' | 'finish'; readonly mainRadius: number },
): SaddleWrap | undefined {
  const outside = frame.tube.outsideDiameter / 2;
  const inside = outside - frame.tube.wall;
  if (inside + Math.abs(seat.offset) > seat.mainRadius) return undefined;
  const sign = seat.end === 'start' ? 1 : -1;
  const at = (radius: number, generator: number): number => {
    // at a finish the branch runs against the member, so angles round it run the other way
    const turned = sign * (generator - seat.acute);
    const reached = saddleOrdinate({ ...seat, radius, generator: turned });
    return reached ?? (radius * Math.cos(turned) * Math.cos(seat.axisAngle)) / Math.sin(seat.axisAngle);
  };
  const ordinatesAt = (generator: number): Ordinates => {
    const outer = at(outside, generator);
    const inner = at(inside, generator);
    return { outer: sign * outer, inner: sign * inner, cut: sign * Math.max(outer, inner) };
  };
  const template = wrapTemplate(frame, 'saddle', ordinatesAt);
  // the first point of the curve is the last one again
  const round = template.curve.slice(1).map(([, ordinate]) => sign * ordinate);
  const mean = round.reduce((sum, ordinate) => sum + ordinate, 0) / round.length;
  return { template, throat: seat.end === 'start' ? template.low : -template.high, mean };
}
