import type { KeepOut } from '../../plan/joint.ts';
import type { PlannedMember } from '../bending/plan-member.ts';
import type { PlannedArc } from '../bending/planned-arc.ts';
import { frameGraph } from '../correction/splice/frame-graph.ts';
import { freeStretches } from '../correction/splice/free-stretches.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';

/** A stretch of a member in which a joint between bars may stand, in stations of the frame as wanted [mm], and what ends it. */
export type JointRoom = {
  readonly from: number;
  readonly to: number;
  readonly startRule: KeepOut;
  readonly endRule: KeepOut;
};

/** A member as it is sawn, before it is bent. */
export type StraightTube = {
  readonly member: string;
  /** As sawn off a bar [mm]. */
  readonly cutLength: number;
  /** Whether anything of it is bent at all. */
  readonly bent: boolean;
  /** Where a station of the frame as wanted lies on it, from the sawn end that is bent first [mm]. */
  readonly placeOf: (station: number) => number;
  /** Where joints between bars may stand; without regard to the joints that it has. */
  readonly rooms: readonly JointRoom[];
};

/** The members of a new frame before they are bent, by name. */
export type StraightTubes = ReadonlyMap<string, StraightTube>;

/**
 * The members of a new frame as straight tube.
 *
 * A joint between bars is welded before the tube is bent. It stands on a straight, as clear of bends, ends and other tubes
 * as any other joint (`freeStretches`), and the clamp must not hold it: on the side of a bend that is held, the straight
 * before it as the tube runs through the machine, the length of the clamp is kept free as well. Common practice, no source:
 * a weld in a clamp marks, and the tube slips beside it.
 *
 * Stretches that are barred for a correction (`closing.barred`) do not count: they are about cutting a frame that came back,
 * and stand on that one.
 *
 * @param planned each member as it is bent, by name
 * @param asked the tube's diameter and the clamp's length [mm], members that are bent from their finish
 */
export function straightTubes(
  wanted: Pick<FrameGeometry, 'members'>,
  planned: ReadonlyMap<string, PlannedMember>,
  asked: {
    readonly outsideDiameter: number;
    readonly gripLength: number;
    readonly fromFinish: ReadonlySet<string>;
  },
): StraightTubes {
  const { outsideDiameter, gripLength, fromFinish } = asked;
  const free = freeStretches(frameGraph(wanted), { outsideDiameter, cutMembers: [], barred: [] });
  const tubes = new Map<string, StraightTube>();
  for (const [index, { name, centreline }] of wanted.members.entries()) {
    const made = planned.get(name);
    if (made === undefined || tubes.has(name)) continue;
    const { planned: arcs, extra, firstThroat, plan } = made;
    const { length } = centreline;
    const along = fromFinish.has(name) ? (station: number) => length - station : (station: number) => station;
    const first = extra - firstThroat;
    let rooms: JointRoom[] = free.filter(({ member, on, tight }) => member === index && on === 'straight' && !tight);
    for (const { piece, station } of arcs)
      if (piece.made === 'die') rooms = without(rooms, along(station), along(station - gripLength), 'bend');
    tubes.set(name, {
      member: name,
      cutLength: plan.cutLength.value,
      bent: arcs.length > 0,
      placeOf: (station) => first + along(station) - stretchBefore(arcs, along(station)),
      rooms: rooms.map(({ from, to, startRule, endRule }) => ({ from, to, startRule, endRule })),
    });
  }
  return tubes;
}

/** What bends before a place, or as much of one as lies before it, grow by [mm]; both from the end that is bent first. */
const stretchBefore = (arcs: readonly PlannedArc[], at: number): number =>
  arcs.reduce((sum, { station, piece, stretch }) => {
    const share = piece.length > 0 ? (at - station) / piece.length : Number(at > station);
    return sum + stretch * Math.min(1, Math.max(0, share));
  }, 0);

/** Rooms without what lies between two stations. */
export function without(rooms: readonly JointRoom[], one: number, other: number, rule: KeepOut): JointRoom[] {
  const [from, to] = [Math.min(one, other), Math.max(one, other)];
  return rooms.flatMap((room) => {
    if (to <= room.from || from >= room.to) return [room];
    return [
      ...(from > room.from ? [{ ...room, to: from, endRule: rule }] : []),
      ...(to < room.to ? [{ ...room, from: to, startRule: rule }] : []),
    ];
  });
}
