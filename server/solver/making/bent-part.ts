import type { Centreline } from '../geometry/centreline.ts';
import { cross, type Vector3 } from '../geometry/vector.ts';

/**
 * A piece of the bent part in the machine's axes at the start of a bend: the origin is the die's axis at the height of
 * the tube, `a` runs along the tube that is not yet bent, `b` from the axis out to the tube, `z` along the bend's normal.
 * Written over for each bend, so that nothing is made anew in the inner loops.
 */
export type PlacedPiece = {
  /** Where it begins, from the datum end [mm], and how much the tube has turned by then [rad]. */
  readonly station: number;
  readonly turned: number;
  readonly length: number;
  /** 0 on a straight. */
  readonly radius: number;
  readonly start: Vector3;
  readonly direction: Vector3;
  /** Towards an arc's centre. */
  readonly inward: Vector3;
  startA: number;
  startB: number;
  startZ: number;
  directionA: number;
  directionB: number;
  directionZ: number;
  inwardA: number;
  inwardB: number;
  inwardZ: number;
};

/** A point in the machine's axes [mm], written over. */
export type MachinePoint = { a: number; b: number; z: number };

/** The machine's axes in those of the member. */
export type MachineAxes = {
  readonly origin: Vector3;
  readonly along: Vector3;
  readonly outward: Vector3;
  readonly normal: Vector3;
};

const NONE: Vector3 = { x: 0, y: 0, z: 0 };

const made = (at: {
  station: number;
  turned: number;
  length: number;
  radius: number;
  start: Vector3;
  direction: Vector3;
  inward: Vector3;
}): PlacedPiece => ({
  station: at.station,
  turned: at.turned,
  length: at.length,
  radius: at.radius,
  start: at.start,
  direction: at.direction,
  inward: at.inward,
  startA: 0,
  startB: 0,
  startZ: 0,
  directionA: 0,
  directionB: 0,
  directionZ: 0,
  inwardA: 0,
  inwardB: 0,
  inwardZ: 0,
});

/**
 * The pieces of a member from the datum end, with what is left on there [mm] as a straight. A rolled arc counts as
 * rolled already where it is in front of the die, and as not yet rolled behind it.
 *
 * @returns the pieces, and how far their indices are ahead of the centreline's
 */
export function bentPart(centreline: Centreline, extraAtStart: number): { pieces: PlacedPiece[]; ahead: number } {
  const pieces: PlacedPiece[] = [];
  let station = 0;
  let turned = 0;
  let ahead = 0;
  for (const [index, piece] of centreline.pieces.entries()) {
    const { direction, length } = piece;
    const straight = piece.kind === 'straight';
    const extra = index === 0 ? extraAtStart : 0;
    const start = {
      x: piece.start.x - extra * direction.x,
      y: piece.start.y - extra * direction.y,
      z: piece.start.z - extra * direction.z,
    };
    if (straight) {
      pieces.push(
        made({ station: station - extra, turned, length: length + extra, radius: 0, start, direction, inward: NONE }),
      );
    } else {
      if (extra > 0) {
        pieces.push(made({ station: -extra, turned: 0, length: extra, radius: 0, start, direction, inward: NONE }));
        ahead = 1;
      }
      const inward = cross(piece.normal, direction);
      pieces.push(made({ station, turned, length, radius: piece.radius, start: piece.start, direction, inward }));
      turned += piece.angle;
    }
    station += length;
  }
  return { pieces, ahead };
}

/** Puts a piece into the machine's axes. */
export function place(piece: PlacedPiece, { origin, along, outward, normal }: MachineAxes): void {
  const { start, direction, inward } = piece;
  const x = start.x - origin.x;
  const y = start.y - origin.y;
  const z = start.z - origin.z;
  piece.startA = x * along.x + y * along.y + z * along.z;
  piece.startB = x * outward.x + y * outward.y + z * outward.z;
  piece.startZ = x * normal.x + y * normal.y + z * normal.z;
  piece.directionA = direction.x * along.x + direction.y * along.y + direction.z * along.z;
  piece.directionB = direction.x * outward.x + direction.y * outward.y + direction.z * outward.z;
  piece.directionZ = direction.x * normal.x + direction.y * normal.y + direction.z * normal.z;
  if (piece.radius === 0) return;
  piece.inwardA = inward.x * along.x + inward.y * along.y + inward.z * along.z;
  piece.inwardB = inward.x * outward.x + inward.y * outward.y + inward.z * outward.z;
  piece.inwardZ = inward.x * normal.x + inward.y * normal.y + inward.z * normal.z;
}

/** Writes where a piece is at a distance from its own beginning [mm]. */
export function pointOn(piece: PlacedPiece, at: number, point: MachinePoint): void {
  const { radius } = piece;
  if (radius === 0) {
    point.a = piece.startA + at * piece.directionA;
    point.b = piece.startB + at * piece.directionB;
    point.z = piece.startZ + at * piece.directionZ;
    return;
  }
  // R sin θ along the arc's direction, R (1 − cos θ) towards its centre
  const far = radius * Math.sin(at / radius);
  const deep = radius * (1 - Math.cos(at / radius));
  point.a = piece.startA + far * piece.directionA + deep * piece.inwardA;
  point.b = piece.startB + far * piece.directionB + deep * piece.inwardB;
  point.z = piece.startZ + far * piece.directionZ + deep * piece.inwardZ;
}
