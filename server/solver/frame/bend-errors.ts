import type { ArcPiece, Centreline, Piece } from '../geometry/centreline.ts';
import { isDieBend, placeAt } from '../geometry/centreline.ts';
import { reverseCentreline } from '../geometry/reverse-centreline.ts';
import { arcCentre, pieceEnd } from '../geometry/slice.ts';
import { add, cross, dot, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';

/**
 * How a point of a bent tube moves where one bend is made a little wrong, its datum end held still. Everything is first
 * order and derived: marks are laid out from the datum end before bending, so that a mark that is off lengthens the
 * straight before its bend and shortens the one after, and a bend that takes more tube takes it from the straight after.
 */

/** A die bend of a member in the order of bending [mm, rad]. */
export type MadeBend = {
  /** Ends of the arc, directions there, and the axis it turns about. */
  readonly start: Vector3;
  readonly end: Vector3;
  readonly before: Vector3;
  readonly after: Vector3;
  readonly normal: Vector3;
  readonly radius: number;
  readonly angle: number;
  readonly made: 'die';
  readonly startStation: number;
  readonly endStation: number;
  /** What goes before it and what follows it: where the two cross is the corner of this bend. */
  readonly previous: Piece | undefined;
  readonly next: Piece | undefined;
};

/** A point that sizes are measured to: on the tube at a station, or the corner of the bend that it stands at. */
export type Target = { readonly station: number; readonly point: Vector3; readonly cornerOf: MadeBend | undefined };

/** Movement of a target for 1 rad of angle, 1 mm of mark, 1 rad of rotation, 1 mm of radius of one bend. */
export type Movement = {
  readonly angle: Vector3;
  readonly mark: Vector3;
  readonly rotation: Vector3;
  readonly radius: Vector3;
};

/** Rounding of stations and of points that lie on the line [mm]. */
const NOTHING = 1e-6;
const STILL: Vector3 = { x: 0, y: 0, z: 0 };
const UNMOVED: Movement = { angle: STILL, mark: STILL, rotation: STILL, radius: STILL };

/** A member as it is bent: from its start, or turned round where it is bent from its finish. */
export type BentMember = {
  readonly line: Centreline;
  readonly bends: readonly MadeBend[];
  readonly fromFinish: boolean;
};

/** The die bends of a member in the order in which they are made. */
export function bentMember(centreline: Centreline, from: 'start' | 'finish'): BentMember {
  const line = from === 'start' ? centreline : reverseCentreline(centreline);
  const bends: MadeBend[] = [];
  let station = 0;
  for (const [index, piece] of line.pieces.entries()) {
    if (isDieBend(piece)) bends.push(madeBend(piece, station, line, index));
    station += piece.length;
  }
  return { line, bends, fromFinish: from === 'finish' };
}

function madeBend(piece: ArcPiece, station: number, line: Centreline, index: number): MadeBend {
  const { point: end, tangent: after } = pieceEnd(piece);
  return {
    start: piece.start,
    end,
    before: piece.direction,
    after,
    normal: piece.normal,
    radius: piece.radius,
    angle: piece.angle,
    made: 'die',
    startStation: station,
    endStation: station + piece.length,
    previous: line.pieces[index - 1],
    next: line.pieces[index + 1],
  };
}

/** A spot of the frame as a target on the member as it is bent. */
export function targetOf(member: BentMember, spot: { readonly station: number; readonly point: Vector3 }): Target {
  const station = member.fromFinish ? member.line.length - spot.station : spot.station;
  const on = placeAt(member.line, station)?.point ?? spot.point;
  const off = length(subtract(spot.point, on)) > NOTHING;
  const cornerOf = off
    ? member.bends.find(
        ({ startStation, endStation }) => station >= startStation - NOTHING && station <= endStation + NOTHING,
      )
    : undefined;
  return { station, point: spot.point, cornerOf };
}

/** How a target moves for each way in which one bend can be wrong. */
export function movement(member: BentMember, target: Target, bend: MadeBend): Movement {
  const { station, point, cornerOf } = target;
  if (cornerOf === bend) return ofCorner(bend, point);
  if (station <= bend.startStation + NOTHING) return UNMOVED;
  const rotation = cross(bend.before, subtract(point, bend.start));
  if (station < bend.endStation - NOTHING) {
    const here = placeAt(member.line, station)?.tangent ?? bend.before;
    return { angle: STILL, mark: subtract(bend.before, here), rotation, radius: STILL };
  }
  return {
    angle: cross(bend.normal, subtract(point, bend.end)),
    mark: subtract(bend.before, bend.after),
    rotation,
    radius: subtract(growth(bend), scale(bend.after, bend.angle)),
  };
}

/** Where the end of an arc goes for 1 mm more radius, its start and its angle held: sin θ d + (1 − cos θ) c. */
const growth = ({ normal, before, angle }: MadeBend): Vector3 =>
  add(scale(before, Math.sin(angle)), scale(cross(normal, before), 1 - Math.cos(angle)));

/**
 * The corner of a bend stays on the line of the straight before it, or on the circle of the crown before it; it goes
 * where what follows the bend (a straight, or a crown) cuts that.
 */
function ofCorner(bend: MadeBend, corner: Vector3): Movement {
  const across =
    bend.next?.kind === 'arc' ? unit(subtract(corner, arcCentre(bend.next))) : cross(bend.normal, bend.after);
  const { previous } = bend;
  const onCircle =
    previous?.kind === 'arc' ? unit(cross(previous.normal, subtract(corner, arcCentre(previous)))) : undefined;
  const held = onCircle ?? bend.before;
  const rate = across === undefined ? 0 : dot(held, across);
  const along = (moved: Vector3): Vector3 =>
    across === undefined || rate === 0 ? STILL : scale(held, dot(moved, across) / rate);
  return {
    angle: along(cross(bend.normal, subtract(corner, bend.end))),
    mark: bend.before,
    rotation: STILL,
    radius: along(growth(bend)),
  };
}

/** Which way a target goes where the bar is sawn 1 mm longer: only the far end moves. */
export const sawnLonger = (member: BentMember, target: Target): Vector3 =>
  target.station >= member.line.length - NOTHING && target.cornerOf === undefined
    ? (placeAt(member.line, member.line.length)?.tangent ?? STILL)
    : STILL;
