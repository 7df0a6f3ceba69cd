import { RADIANS } from '../geometry/angle.ts';
import type { PlanPiece } from '../../plan/frame.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { isDieBend, arcPiece, placeAt, straightPiece, type Centreline, type Piece } from '../geometry/centreline.ts';
import { closestStation } from '../geometry/closest-station.ts';
import { cross, dot, subtract, unit, type Vector3 } from '../geometry/vector.ts';

/** The place on the wanted member that a point of the corrected one belongs to. */
type Follow = (station: number, point: Vector3) => Vector3 | undefined;

/** Pieces of a plan as the solver reckons with them; one without a direction is left out. */
export function centrelineOf(pieces: readonly PlanPiece[]): Centreline {
  const laid = pieces.flatMap((piece): Piece[] => {
    if (piece.kind === 'straight') {
      const direction = unit(subtract(piece.to, piece.from));
      return direction === undefined ? [] : [straightPiece({ start: piece.from, direction, length: piece.length })];
    }
    const direction = unit(cross(piece.normal, subtract(piece.from, piece.centre)));
    const { from: start, normal, radius, made } = piece;
    const angle = piece.angle * RADIANS;
    return direction === undefined ? [] : [arcPiece({ start, direction, normal, radius, angle, made })];
  });
  return { pieces: laid, length: laid.reduce((sum, piece) => sum + piece.length, 0) };
}

/** Where arcs of the die follow on each other without a straight between them [mm]: a cut may part them. */
function dieRuns(pieces: readonly Piece[]): { from: number; to: number }[] {
  const runs: { from: number; to: number }[] = [];
  let reached = 0;
  for (const piece of pieces) {
    const end = reached + piece.length;
    const last = runs.at(-1);
    if (isDieBend(piece)) {
      if (last?.to === reached) last.to = end;
      else runs.push({ from: reached, to: end });
    }
    reached = end;
  }
  return runs;
}

/** Stations of the middle of each corner, growing [mm]. A ring may begin in the middle of one. */
function cornersOf({ pieces, length }: Centreline, closed: boolean): number[] {
  const runs = dieRuns(pieces);
  const [first, last] = [runs[0], runs.at(-1)];
  if (closed && first !== undefined && last !== undefined && first.from === 0 && last.to === length) {
    // a ring that is one bend all the way round has no corner that could be told from any other place
    if (first === last) return [];
    runs.shift();
    last.to += first.to;
  }
  const middles = runs.map(({ from, to }) => (from + to) / 2);
  return middles.map((station) => (station >= length ? station - length : station)).toSorted((a, b) => a - b);
}

/**
 * How a corrected member follows the wanted one: feet and corners belong to feet and corners, and what lies between
 * two of them to the same share of the stretch there, so that a crown that was cut shorter is held against the whole
 * wanted crown. A member that has lost or won a corner, or a ring without corners, belongs to what is nearest.
 *
 * @param line the corrected member; its pieces need not meet
 */
export function followWanted(wanted: MemberGeometry, line: Centreline): Follow {
  const goal = wanted.centreline;
  const [own, theirs] = [cornersOf(line, wanted.closed), cornersOf(goal, wanted.closed)];
  if (own.length !== theirs.length || (wanted.closed && own.length === 0)) {
    return (_, point) => closestStation(goal, point)?.point;
  }
  if (!wanted.closed) {
    const [from, to] = [
      [0, ...own, line.length],
      [0, ...theirs, goal.length],
    ];
    return (station) => placeAt(goal, sameShare(from, to, station))?.point;
  }
  // a ring may begin somewhere else after it was cut: its corners are counted on from the one that lies best
  const from = onFrom(own, bestShift(line, own, goal, theirs), line.length);
  const to = onFrom(theirs, 0, goal.length);
  const first = from[0] ?? 0;
  return (station) => {
    const at = sameShare(from, to, station < first ? station + line.length : station);
    return placeAt(goal, at > goal.length ? at - goal.length : at)?.point;
  };
}

/** The station that lies at the same share between the same two marks. Both lists grow and are equally long. */
function sameShare(from: readonly number[], to: readonly number[], station: number): number {
  let index = 1;
  while (index < from.length - 1 && station > (from[index] ?? 0)) index += 1;
  const [low = 0, high = 0] = [from[index - 1], from[index]];
  const [start = 0, finish = 0] = [to[index - 1], to[index]];
  const share = high > low ? Math.min(1, Math.max(0, (station - low) / (high - low))) : 0;
  return start + share * (finish - start);
}

/** Corners of a ring from one of them on and once round to it again, growing past the ring's length. */
function onFrom(corners: readonly number[], shift: number, length: number): number[] {
  const round = [...corners.slice(shift), ...corners.slice(0, shift).map((station) => station + length)];
  return [...round, (round[0] ?? 0) + length];
}

/** Which corner of a ring belongs to the first wanted one: the count at which all lie nearest to their partners. */
function bestShift(line: Centreline, own: readonly number[], goal: Centreline, theirs: readonly number[]): number {
  const mine = own.map((station) => placeAt(line, station)?.point);
  const wanted = theirs.map((station) => placeAt(goal, station)?.point);
  const apart = (shift: number): number =>
    wanted.reduce((sum, to, index) => {
      const from = mine[(index + shift) % mine.length];
      if (from === undefined || to === undefined) return sum;
      const gap = subtract(from, to);
      return sum + dot(gap, gap);
    }, 0);
  let best = 0;
  for (let shift = 1; shift < own.length; shift += 1) if (apart(shift) < apart(best)) best = shift;
  return best;
}
