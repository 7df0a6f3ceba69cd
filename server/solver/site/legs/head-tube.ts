import { arcCentre } from '../../geometry/slice.ts';
import type { Centreline, Piece } from '../../geometry/centreline.ts';
import { add, angleBetween, cross, dot, length, scale, subtract, type Vector3 } from '../../geometry/vector.ts';

/** A piece of the tube under a head; at an end that is carried on, the piece goes on beyond it. */
type Stretch = { readonly piece: Piece; readonly before: boolean; readonly after: boolean };

/** Directions nearer than this are one [rad]. */
const SAME_WAY = 1e-9;

/**
 * Distance from the axis of the tube that a head sits on, as far as its saddle reaches: the pieces on both sides of it,
 * so that a head at a tangent point has the straight on one side and the bend on the other. The outermost pieces are
 * carried on.
 *
 * @param at the tube's centreline, closed or not, the station of the head and how far the saddle reaches each way [mm]
 * @param shift how far the tube lies from that line [mm]
 * @returns null where the tube is straight there
 */
export function distanceToTube(
  at: { readonly line: Centreline; readonly closed: boolean; readonly station: number; readonly reach: number },
  shift: Vector3,
): ((point: Vector3) => number) | null {
  const pieces = piecesNear(at);
  const [first] = pieces;
  const straight = pieces.every(
    ({ kind, direction }) =>
      kind === 'straight' && first !== undefined && angleBetween(direction, first.direction) < SAME_WAY,
  );
  if (straight) return null;
  const stretches = pieces.map((piece, index): Stretch => ({
    piece,
    before: index === 0,
    after: index === pieces.length - 1,
  }));
  return (point) => {
    const from = subtract(point, shift);
    let least = Infinity;
    for (const stretch of stretches) least = Math.min(least, distanceToStretch(stretch, from));
    return least;
  };
}

/** The pieces that have a part within reach of a station, in order; round the closing of a ring, too. */
function piecesNear({ line, closed, station, reach }: Parameters<typeof distanceToTube>[0]): Piece[] {
  const near: Piece[] = [];
  // a saddle is far shorter than a ring: one more round each way is enough
  for (const round of closed ? [-line.length, 0, line.length] : [0]) {
    let begin = round;
    for (const [index, piece] of line.pieces.entries()) {
      const end = begin + piece.length;
      const open = !closed && (index === 0 ? station < begin : index === line.pieces.length - 1 && station > end);
      if (open || (begin < station + reach && end > station - reach)) near.push(piece);
      begin = end;
    }
  }
  return near;
}

function distanceToStretch({ piece, before, after }: Stretch, point: Vector3): number {
  if (piece.kind === 'straight') {
    const from = subtract(point, piece.start);
    const along = within(dot(from, piece.direction), 0, piece.length, { before, after });
    return length(subtract(from, scale(piece.direction, along)));
  }
  const centre = arcCentre(piece);
  const from = subtract(point, centre);
  const height = dot(from, piece.normal);
  const out = cross(piece.direction, piece.normal);
  const [ahead, outward] = [dot(from, piece.direction), dot(from, out)];
  // counted from the arc's middle, so that the jump of the angle lies opposite
  const half = piece.angle / 2;
  const turn = Math.atan2(ahead, outward) - half;
  const fromMiddle = turn < -Math.PI ? turn + 2 * Math.PI : turn;
  const kept = within(fromMiddle, -half, half, { before, after });
  if (kept === fromMiddle) return Math.hypot(Math.hypot(ahead, outward) - piece.radius, height);
  const rim = kept + half;
  const end = add(scale(out, piece.radius * Math.cos(rim)), scale(piece.direction, piece.radius * Math.sin(rim)));
  return length(subtract(from, end));
}

const within = (value: number, low: number, high: number, open: { before: boolean; after: boolean }): number =>
  value < low && !open.before ? low : value > high && !open.after ? high : value;
