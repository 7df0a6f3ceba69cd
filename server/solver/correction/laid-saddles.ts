import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt, straightPiece, type Centreline } from '../geometry/centreline.ts';
import { turnAbout } from '../geometry/rigid-motion.ts';
import { length, subtract, unit } from '../geometry/vector.ts';
import { withLine } from './with-line.ts';
import { movedLine } from '../geometry/moved-centreline.ts';
import { endOn, seatOf, turnOnto, type BothFrames, type Seat, type SetFrom } from './saddle-seat.ts';

/**
 * Members that sit on others, laid on those as they are now: a straight one is cut to what is between its seats, a bent
 * one keeps its shape and is turned towards its far seat, one with a free end goes with its partner.
 *
 * @param drawn all members as drawn
 * @param bent the same ones, some bent otherwise
 */
export function laidSaddles(
  drawn: readonly MemberGeometry[],
  bent: readonly MemberGeometry[],
  setFrom: SetFrom,
): readonly MemberGeometry[] {
  if (bent.every((member) => partnersOf(member).length === 0)) return bent;
  const was = new Map(drawn.map((member) => [member.name, member]));
  const now = new Map(bent.map((member) => [member.name, member]));
  const done = new Set(bent.filter((member) => partnersOf(member).length === 0).map(({ name }) => name));
  // each round lays the members whose partners stand; those that sit on each other in a ring stay where they are
  for (let round = 0; round < bent.length && done.size < bent.length; round += 1) {
    for (const member of bent) {
      if (done.has(member.name) || !partnersOf(member).every((name) => done.has(name))) continue;
      const old = was.get(member.name);
      if (old !== undefined) now.set(member.name, laid(old, member, { was, now, setFrom }));
      done.add(member.name);
    }
  }
  return bent.map((member) => now.get(member.name) ?? member);
}

const partnersOf = ({ start, finish }: MemberGeometry): string[] =>
  [start, finish].flatMap((end) => (end.kind === 'saddle' ? [end.onto] : []));

function laid(old: MemberGeometry, member: MemberGeometry, frames: BothFrames): MemberGeometry {
  const start = seatOf(old, 'start', frames);
  const finish = seatOf(old, 'finish', frames, start);
  const line = between(member.centreline, start, finish);
  const [first, last] = [placeAt(line, 0), placeAt(line, line.length)];
  if (first === undefined || last === undefined) return member;
  return withLine(
    member,
    line,
    endOn(member.start, start, first.tangent, frames),
    endOn(member.finish, finish, last.tangent, frames),
  );
}

function between(line: Centreline, start: Seat | undefined, finish: Seat | undefined): Centreline {
  if (start === undefined || finish === undefined) {
    const seat = start ?? finish;
    return seat === undefined ? line : movedLine(seat.motion, line);
  }
  const chord = subtract(finish.point, start.point);
  const direction = unit(chord);
  if (direction === undefined) return line;
  if (line.pieces.length === 1 && line.pieces[0]?.kind === 'straight') {
    const cut = straightPiece({ start: start.point, direction, length: length(chord) });
    return { pieces: [cut], length: cut.length };
  }
  const from = placeAt(line, 0)?.point;
  const to = placeAt(line, line.length)?.point;
  const own = from === undefined || to === undefined ? undefined : unit(subtract(to, from));
  if (from === undefined || own === undefined) return line;
  return movedLine(turnAbout(from, turnOnto(own, direction), subtract(start.point, from)), line);
}
