import type { HeadEnd } from '../../../job/leg.ts';
import { placeAt } from '../../geometry/centreline.ts';
import { add, angleBetween, cross, dot, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import { saddleReach, type BranchPoint, type Seated } from '../../joints/saddle-wrap.ts';
import type { LaidFrame, LaidLeg } from '../laid-site.ts';
import { distanceToTube } from './head-tube.ts';

/**
 * What a head takes off its leg. A saddle's `acute` side is a unit vector square to the leg, in the plane of both axes,
 * where the two tubes close in on each other and the saddle is cut deepest.
 */
export type HeadCut =
  | { readonly end: 'eye'; readonly axisAngle: number; readonly takes: number }
  | {
      readonly end: 'saddle';
      /** Between the two axes, acute or right [rad]. */
      readonly axisAngle: number;
      readonly seat: Seated;
      readonly acuteSide: Vector3;
      /** Root gap, along the leg [mm]. */
      readonly gap: number;
      /** Of the leg's outer and inner surface [mm]. */
      readonly outer: number;
      readonly inner: number;
    };

/** A leg seen from its foot: unit direction and the unit direction of its generator 0. */
type Seen = { readonly along: Vector3; readonly zero: Vector3 };

/**
 * How a leg's head is cut. The leg comes from the far end of its tube, so its saddle is one at a finish; the tube that it
 * sits on is taken through the head.
 *
 * @returns undefined where the leg runs along the tube or the frame has no such tube
 */
export function headCut(
  leg: LaidLeg,
  { along, zero }: Seen,
  frame: LaidFrame,
  setting: { readonly head: HeadEnd; readonly gap: number; readonly mainRadius: number },
): HeadCut | undefined {
  const made = frame.lines.find(({ name }) => name === leg.member);
  const there = made === undefined ? undefined : placeAt(made.centreline, leg.station);
  if (made === undefined || there === undefined) return undefined;
  const away = scale(along, -1);
  const main = dot(away, there.tangent) < 0 ? scale(there.tangent, -1) : there.tangent;
  const axisAngle = angleBetween(away, main);
  if (setting.head.end === 'eye') return { end: 'eye', axisAngle, takes: setting.head.takes };
  const acuteSide = unit(subtract(main, scale(away, dot(away, main))));
  if (acuteSide === undefined) return undefined;
  const outer = leg.outsideDiameter / 2;
  const { mainRadius } = setting;
  const reach = saddleFootprint({ axisAngle, radius: outer, mainRadius }).acute;
  const distance = distanceToTube(
    { line: made.centreline, closed: made.closed, station: leg.station, reach },
    subtract(leg.head, there.point),
  );
  const side = cross(away, acuteSide);
  const pointOf = ({ along: off, acute, quarter }: BranchPoint): Vector3 =>
    add(add(leg.head, scale(away, off)), add(scale(acuteSide, acute), scale(side, quarter)));
  return {
    end: 'saddle',
    axisAngle,
    seat: {
      axisAngle,
      offset: 0,
      acute: Math.atan2(dot(acuteSide, cross(along, zero)), dot(acuteSide, zero)),
      distance: distance === null ? null : (point) => distance(pointOf(point)),
      end: 'finish',
      mainRadius,
    },
    acuteSide,
    gap: setting.gap,
    outer,
    inner: outer - leg.wall,
  };
}

/**
 * How far a saddle reaches along a straight tube from where the axes meet [mm]: (r + R cos β) / sin β to its acute side,
 * (r − R cos β) / sin β to the other. Derived: x = z cos β + r cos φ sin β with z of `saddleOrdinate` at φ = 0 and 180°.
 */
export function saddleFootprint(of: {
  readonly axisAngle: number;
  readonly radius: number;
  readonly mainRadius: number;
}): { acute: number; other: number } {
  const [sine, cosine] = [Math.sin(of.axisAngle), Math.cos(of.axisAngle)];
  return {
    acute: (of.radius + of.mainRadius * cosine) / sine,
    other: (of.radius - of.mainRadius * cosine) / sine,
  };
}

/**
 * What the head takes off the centre length along one generator, the root gap with it [mm]: the line to cut to is the
 * further of the outer and the inner surface, as in the wrap.
 *
 * @param generator from generator 0, right-handed about the leg [rad]
 * @returns undefined where the leg's inner surface misses the tube
 */
export function headTakes(head: HeadCut, generator: number): number | undefined {
  if (head.end === 'eye') return head.takes;
  // seen from the head the generators run the other way round
  return takesAt(head, head.seat.acute - generator);
}

/**
 * The same along a generator that is named by its angle from the saddle's acute side [rad], right-handed as seen from the
 * head: whatever turns the saddle about the leg, it stays the same one of it.
 */
export function takesAt(head: HeadCut, turned: number): number | undefined {
  if (head.end === 'eye') return head.takes;
  const inner = saddleReach(head.seat, head.inner, turned);
  if (inner === undefined) return undefined;
  return Math.max(saddleReach(head.seat, head.outer, turned) ?? inner, inner) + head.gap;
}
