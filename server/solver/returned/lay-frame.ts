import type { Link } from '../geometry/centreline.ts';
import type { Stand } from '../geometry/chain.ts';
import {
  laid,
  laidBetween,
  motionBetween,
  movedLaid,
  movedStand,
  standAt,
  type LaidLine,
} from '../geometry/laid-line.ts';
import { bestMotion, composed, moved, turnAbout, type RigidMotion } from '../geometry/rigid-motion.ts';
import { add, scale, type Vector3 } from '../geometry/vector.ts';
import type { FrameModel, MemberModel, SeatAt } from './frame-model.ts';
import type { Parameter } from './parameters.ts';
import { stationOf } from './tube-places.ts';

/** All members of a frame, in its order. */
export type LaidFrame = LaidLine[];

/** The frame with the given deviations from the wanted one, in the order of the parameters [mm, rad]. */
export function layFrame(model: FrameModel, values: readonly number[]): LaidFrame {
  const lines: LaidFrame = model.members.map(({ chain }) => ({ line: NO_LINE, normal: chain.start.normal }));
  layAgain(model, model.order, values, lines);
  return lines;
}

const NO_LINE = { pieces: [], length: 0 };

/** Lays some members again, in order, into the frame. */
export function layAgain(
  model: FrameModel,
  which: readonly number[],
  values: readonly number[],
  lines: LaidFrame,
): void {
  for (const index of which) {
    const member = model.members[index];
    if (member !== undefined) lines[index] = layMember(model, member, values, lines);
  }
}

function layMember(model: FrameModel, member: MemberModel, values: readonly number[], lines: LaidFrame): LaidLine {
  const { seat, chain } = member;
  const { start } = chain;
  const links = changedLinks(member, values);
  switch (seat.kind) {
    case 'stands': {
      const moves = member.own.some(({ what }) => what.startsWith('shift') || what.startsWith('turn'));
      const stood = moves ? movedStand(standMotion(model, member, seat.pivot, values), start) : start;
      return laid(stood, links);
    }
    case 'one': {
      const on = seatNow(seat.at, valueOf(member, values, 'along-partner'), lines);
      const carried = on === undefined ? undefined : motionBetween(seat.at.stood, on);
      if (on === undefined || carried === undefined) return laid(start, links);
      const end = moved(carried, seat.at.end);
      const motion = composed(standMotion(model, member, end, values), carried);
      if (seat.side === 'start') return laid(movedStand(motion, start), links);
      // a chain that sits with its finish is laid from its start, and then brought to its seat
      const own = laid(start, links);
      const [is, was] = [standAt(own, own.line.length), finishOf(chain)];
      return is === undefined || was === undefined ? own : movedLaid(composed(motion, motionBetween(is, was)), own);
    }
    case 'two': {
      const along = valueOf(member, values, 'along-partner');
      const other = seat.against * along + valueOf(member, values, 'out-of-level');
      const first = seatNow(seat.start, along, lines);
      const last = seatNow(seat.finish, other, lines);
      if (first === undefined || last === undefined) return laid(start, links);
      const carried = motionBetween(seat.start.stood, first);
      const from = moved(carried, seat.start.end);
      const to = moved(motionBetween(seat.finish.stood, last), seat.finish.end);
      if (links.length === 1 && links[0]?.kind === 'straight')
        return laidBetween(from, to, movedStand(carried, start)) ?? laid(start, links);
      const own = laid(movedStand(carried, start), links);
      const [a, b] = [standAt(own, 0), standAt(own, own.line.length)];
      if (a === undefined || b === undefined) return own;
      const pairs = [
        { from: a.point, to: from, weight: 1 },
        { from: b.point, to, weight: 1 },
      ];
      return movedLaid(bestMotion(pairs, model.flat ? model.axes.z : null), own);
    }
  }
}

/** How the partner stands where the seat is now, `along` further towards its finish [mm]. */
function seatNow(seat: SeatAt, along: number, lines: LaidFrame): Stand | undefined {
  const partner = lines[seat.partner];
  return partner === undefined ? undefined : standAt(partner, stationOf(seat.place, partner.line) + along);
}

const finishOf = ({ start, links }: MemberModel['chain']): Stand | undefined => {
  const whole = laid(start, links);
  return standAt(whole, whole.line.length);
};

const valueOf = ({ own, first }: MemberModel, values: readonly number[], what: Parameter['what']): number => {
  const place = own.findIndex((parameter) => parameter.what === what);
  return place < 0 ? 0 : (values[first + place] ?? 0);
};

/** Shift and turn of a member about a point. */
function standMotion(
  { axes }: FrameModel,
  member: MemberModel,
  pivot: Vector3,
  values: readonly number[],
): RigidMotion {
  const along = (kind: 'turn' | 'shift'): Vector3 =>
    (['x', 'y', 'z'] as const).reduce(
      (sum: Vector3, axis) => add(sum, scale(axes[axis], valueOf(member, values, `${kind}-${axis}`))),
      { x: 0, y: 0, z: 0 },
    );
  return turnAbout(pivot, along('turn'), along('shift'));
}

/** The links of a member with its deviations. */
function changedLinks({ chain, own, first, closed }: MemberModel, values: readonly number[]): Link[] {
  const links = chain.links.slice();
  const last = links.length - 1;
  for (let index = 0; index < own.length; index += 1) {
    const parameter = own[index];
    const value = values[first + index] ?? 0;
    if (parameter === undefined || value === 0) continue;
    const { piece, what } = parameter;
    const link = links[piece];
    if (link === undefined) continue;
    links[piece] = changed(link, what, value);
    // both halves of the straight that a closed tube begins in
    const half = links[last];
    if (closed && what === 'length' && piece === 0 && last > 0 && half?.kind === 'straight')
      links[last] = changed(half, what, value);
  }
  return links;
}

function changed(link: Link, what: Parameter['what'], value: number): Link {
  if (link.kind === 'straight') return what === 'length' ? { kind: 'straight', length: link.length + value } : link;
  const { radius, angle, rotation, made } = link;
  switch (what) {
    case 'angle':
      return { kind: 'arc', radius, angle: angle + value, rotation, made };
    case 'radius':
      return { kind: 'arc', radius: radius + value, angle, rotation, made };
    case 'rotation':
      return { kind: 'arc', radius, angle, rotation: rotation + value, made };
    case 'length':
      // a rolled arc grows at its radius
      return { kind: 'arc', radius, angle: angle + value / radius, rotation, made };
    case 'bow':
      // it turns by more over the same length
      return { kind: 'arc', radius: (radius * angle) / (angle + value), angle: angle + value, rotation, made };
    default:
      return link;
  }
}
