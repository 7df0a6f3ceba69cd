import { placeOn, type ArcPiece, type Centreline, type Piece } from '../../geometry/centreline.ts';
import { arcCentre } from '../../geometry/slice.ts';
import { add, angleBetween, cross, dot, length, scale, subtract, type Vector3 } from '../../geometry/vector.ts';

/** How far a place is from something [mm]. It is asked thousands of times, so that nothing is made for an answer. */
export type Distance = (x: number, y: number, z: number) => number;

/** Directions nearer than this are one [rad]: rounding. */
const SAME_WAY = 1e-9;

/** Steps round an arc in which it is held against a leg [rad]: between two places it bulges by 0.1 % of its radius. */
const STEP = Math.PI / 36;

/** A bend at the end of a tube is carried on round its circle by no more than this [rad]; our own choice. */
const CARRIED = Math.PI / 2;

/** The axis of a leg, and on past its head, between two places [mm]. */
export type LegLine = { readonly from: Vector3; readonly to: Vector3 };

type Tube = { readonly line: Centreline; readonly closed: boolean };

/**
 * Which pieces of a tube a leg can touch that sits on it: those with a place of their axis nearer to the leg's than both
 * radii together. So a head at a tangent point has the straight on one side and the bend on the other, and a tube that
 * bends back to the leg is seen as well.
 *
 * @param within both radii, and what the doubt of where they are may add [mm]
 * @returns the numbers of the pieces in the tube's list
 */
export function piecesNear({ line, closed }: Tube, leg: LegLine, within: number): number[] {
  const last = line.pieces.length - 1;
  return [...line.pieces.keys()].filter((index) => {
    const piece = line.pieces[index];
    if (piece === undefined) return false;
    const carried = { before: !closed && index === 0, after: !closed && index === last };
    return piece.kind === 'straight'
      ? betweenStraights(piece, carried, leg) < within
      : betweenArc(piece, leg) < within + piece.radius / 1000;
  });
}

type Carried = { readonly before: boolean; readonly after: boolean };

/** Least distance of a straight, carried on where it is an end of its tube, from a stretch of a leg; it is convex along it. */
function betweenStraights(piece: Piece, carried: Carried, { from, to }: LegLine): number {
  const distance = toStraight(piece, carried);
  const at = (share: number): number => {
    const { x, y, z } = add(from, scale(subtract(to, from), share));
    return distance(x, y, z);
  };
  let [low, high] = [0, 1];
  // thirds: 40 steps leave a ten-millionth of the leg
  for (let step = 0; step < 40; step += 1) {
    const third = (high - low) / 3;
    if (at(low + third) < at(high - third)) high -= third;
    else low += third;
  }
  return at((low + high) / 2);
}

function betweenArc(piece: ArcPiece, { from, to }: LegLine): number {
  const way = subtract(to, from);
  const steps = Math.max(1, Math.ceil(piece.angle / STEP));
  let least = Infinity;
  for (let step = 0; step <= steps; step += 1) {
    const away = subtract(placeOn(piece, (piece.length * step) / steps).point, from);
    const share = Math.min(1, Math.max(0, dot(away, way) / dot(way, way)));
    least = Math.min(least, length(subtract(away, scale(way, share))));
  }
  return least;
}

/**
 * Distance from the axis of a tube, of some of its pieces; the ends of an open tube are carried on.
 *
 * @param shift how far the tube lies from that line [mm]
 * @returns null where those pieces are one straight
 */
export function distanceToTube({ line, closed }: Tube, pieces: readonly number[], shift: Vector3): Distance | null {
  const chosen = pieces.flatMap((index) => line.pieces[index] ?? []);
  const [first] = chosen;
  const isStraight = ({ kind, direction, start }: Piece): boolean =>
    kind === 'straight' &&
    first !== undefined &&
    angleBetween(direction, first.direction) < SAME_WAY &&
    length(cross(subtract(start, first.start), first.direction)) < SAME_WAY * (1 + line.length);
  if (chosen.every(isStraight)) return null;
  const last = line.pieces.length - 1;
  const distances = pieces.flatMap((index): Distance[] => {
    const piece = line.pieces[index];
    if (piece === undefined) return [];
    const carried = { before: !closed && index === 0, after: !closed && index === last };
    const shifted = { ...piece, start: add(piece.start, shift) };
    return [shifted.kind === 'straight' ? toStraight(shifted, carried) : toArc(shifted, carried)];
  });
  const [one, two] = distances;
  if (one !== undefined && two === undefined) return one;
  return (x, y, z) => {
    let least = Infinity;
    for (const distance of distances) least = Math.min(least, distance(x, y, z));
    return least;
  };
}

function toStraight({ start, direction, length: long }: Piece, { before, after }: Carried): Distance {
  const [low, high] = [before ? -Infinity : 0, after ? Infinity : long];
  return (x, y, z) => {
    const ax = x - start.x;
    const ay = y - start.y;
    const az = z - start.z;
    const along = Math.min(high, Math.max(low, ax * direction.x + ay * direction.y + az * direction.z));
    const bx = ax - along * direction.x;
    const by = ay - along * direction.y;
    const bz = az - along * direction.z;
    return Math.sqrt(bx * bx + by * by + bz * bz);
  };
}

function toArc(piece: ArcPiece, { before, after }: Carried): Distance {
  const { direction, normal, radius } = piece;
  const centre = arcCentre(piece);
  const out = cross(direction, normal);
  // counted from the arc's middle, so that the jump of the angle lies opposite
  const half = piece.angle / 2;
  const spare = Math.max(0, Math.min(CARRIED, Math.PI - half));
  const [low, high] = [-half - (before ? spare : 0), half + (after ? spare : 0)];
  return (x, y, z) => {
    const ax = x - centre.x;
    const ay = y - centre.y;
    const az = z - centre.z;
    const height = ax * normal.x + ay * normal.y + az * normal.z;
    const ahead = ax * direction.x + ay * direction.y + az * direction.z;
    const outward = ax * out.x + ay * out.y + az * out.z;
    const turn = Math.atan2(ahead, outward) - half;
    const fromMiddle = turn < -Math.PI ? turn + 2 * Math.PI : turn;
    if (fromMiddle >= low && fromMiddle <= high) {
      const off = Math.sqrt(ahead * ahead + outward * outward) - radius;
      return Math.sqrt(off * off + height * height);
    }
    const rim = (fromMiddle < low ? low : high) + half;
    return Math.hypot(ahead - radius * Math.sin(rim), outward - radius * Math.cos(rim), height);
  };
}
