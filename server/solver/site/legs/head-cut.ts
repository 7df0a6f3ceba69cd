import type { HeadEnd } from '../../../job/leg.ts';
import { placeAt } from '../../geometry/centreline.ts';
import { add, angleBetween, cross, dot, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import { rangeOf, saddleReach, type BranchLine, type Seated } from '../../joints/saddle-wrap.ts';
import type { LaidFrame, LaidLeg, MadeLine } from '../laid-site.ts';
import { distanceToTube, piecesNear, type Distance } from './head-tube.ts';
import type { LegWay } from './leg-way.ts';

/** What the tubes of leg and frame may be off from each other before another piece comes within reach [of both radii]: our own choice. */
const ROOM = 1.5;

/**
 * What a head takes off its leg. A saddle's `acute` side is a unit vector square to the leg, in the plane of both axes,
 * where the two tubes close in on each other; on a straight tube the saddle is cut deepest there.
 */
export type HeadCut =
  | { readonly end: 'eye'; readonly axisAngle: number; readonly takes: number }
  | {
      readonly end: 'saddle';
      /** Between the two axes, acute or right [rad]. */
      readonly axisAngle: number;
      readonly seat: Seated;
      /** Pieces of the tube that the leg can touch, by their numbers. */
      readonly pieces: readonly number[];
      readonly acuteSide: Vector3;
      /** Root gap, along the leg [mm]. */
      readonly gap: number;
      /** Of the leg's outer and inner surface [mm]. */
      readonly outer: number;
      readonly inner: number;
      /** What was asked of it before, so that it is worked out once, by the angle. */
      readonly taken: Map<number, number | undefined>;
    };
export type SaddleCut = Extract<HeadCut, { end: 'saddle' }>;

/** What is known of a saddle from the leg as typed. */
export type KnownSaddle = Pick<SaddleCut, 'pieces'> & { readonly known: Seated['known'] };

/** How a head is cut: its end, gap and tube that it sits on [mm]; what is known of the saddle, null: nothing. */
export type HeadSetting = {
  readonly head: HeadEnd;
  readonly gap: number;
  readonly mainRadius: number;
  readonly saddle: KnownSaddle | null;
};

/** A leg from its foot with the unit direction of its generator 0. */
type Seen = LegWay & { readonly zero: Vector3 };

/**
 * How a leg's head is cut. The leg comes from the far end of its tube, so its saddle is one at a finish; the tube that it
 * sits on is taken through the head.
 *
 * @returns undefined where the leg runs along the tube or the frame has no such tube
 */
export function headCut(leg: LaidLeg, seen: Seen, frame: LaidFrame, setting: HeadSetting): HeadCut | undefined {
  const made = frame.lines.find(({ name }) => name === leg.member);
  const there = made === undefined ? undefined : placeAt(made.centreline, leg.station);
  if (made === undefined || there === undefined) return undefined;
  const { along, zero } = seen;
  const away = scale(along, -1);
  const main = dot(away, there.tangent) < 0 ? scale(there.tangent, -1) : there.tangent;
  const axisAngle = angleBetween(away, main);
  if (setting.head.end === 'eye') return { end: 'eye', axisAngle, takes: setting.head.takes };
  const acuteSide = unit(subtract(main, scale(away, dot(away, main))));
  if (acuteSide === undefined) return undefined;
  const outer = leg.outsideDiameter / 2;
  const { mainRadius } = setting;
  const { far, near } = rangeOf({ axisAngle, mainRadius, far: Infinity }, outer);
  const known = fits(setting.saddle, made) ? setting.saddle : null;
  const pieces =
    known?.pieces ??
    piecesNear(
      { line: made.centreline, closed: made.closed },
      { from: add(leg.head, scale(away, near)), to: add(leg.head, scale(away, Math.max(far, seen.length))) },
      ROOM * (outer + mainRadius),
    );
  const shift = subtract(leg.head, there.point);
  const distance = distanceToTube({ line: made.centreline, closed: made.closed }, pieces, shift);
  return {
    end: 'saddle',
    axisAngle,
    seat: {
      axisAngle,
      offset: 0,
      acute: Math.atan2(dot(acuteSide, cross(along, zero)), dot(acuteSide, zero)),
      distance: distance && beside(distance, { head: leg.head, away, acuteSide }),
      far: Infinity,
      end: 'finish',
      mainRadius,
      ...(known?.known === undefined ? {} : { known: known.known }),
    },
    pieces,
    acuteSide,
    gap: setting.gap,
    outer,
    inner: outer - leg.wall,
    taken: new Map(),
  };
}

/** Whether what is known speaks of the pieces that a tube has. */
const fits = (known: KnownSaddle | null, { centreline: { pieces } }: MadeLine): boolean =>
  known !== null && known.pieces.every((index) => index < pieces.length);

/** A distance along lines beside the leg, from its head away from the tube. */
function beside(
  distance: Distance,
  { head, away, acuteSide }: { readonly head: Vector3; readonly away: Vector3; readonly acuteSide: Vector3 },
): NonNullable<Seated['distance']> {
  const side = cross(away, acuteSide);
  return ({ acute, quarter }: BranchLine) => {
    const begin = add(head, add(scale(acuteSide, acute), scale(side, quarter)));
    return (along) => distance(begin.x + along * away.x, begin.y + along * away.y, begin.z + along * away.z);
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
  if (!head.taken.has(turned)) head.taken.set(turned, saddleTakes(head, turned));
  return head.taken.get(turned);
}

function saddleTakes({ seat, inner, outer, gap }: SaddleCut, turned: number): number | undefined {
  const within = saddleReach(seat, inner, turned);
  return within === undefined ? undefined : Math.max(saddleReach(seat, outer, turned) ?? within, within) + gap;
}
