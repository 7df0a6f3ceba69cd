import type { Check, EndGeometry, FrameGeometry, MemberGeometry, Spot } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { bestMotion, composed, inverted, moved, UNMOVED, type RigidMotion } from '../geometry/rigid-motion.ts';
import { pieceStations } from '../geometry/slice.ts';
import { length, subtract, type Vector3 } from '../geometry/vector.ts';
import { frameMaker } from '../returned/frame-of-lines.ts';
import { laidBetween, motionBetween, movedStand, standAt } from '../geometry/laid-line.ts';
import { movedLine } from '../geometry/moved-centreline.ts';
import { once } from '../once.ts';
import { sizesOf } from '../returned/sizes.ts';
import type { CorrectedFrame } from './corrected.ts';
import { relaidMember, type MemberChange } from './relaid-member.ts';
import { betweenFeet } from './trims.ts';
import { tubeStand } from '../geometry/tube-stand.ts';
import { withLine } from './with-line.ts';

/** Changes at the arcs of a frame, by member; and the members that are bent from their finish. */
export type FrameChange = {
  readonly members: ReadonlyMap<string, MemberChange>;
  readonly fromFinish: ReadonlySet<string>;
  /** How members that sit on no other are moved as well, by name; left out: they stay where their first end is. */
  readonly placed?: ReadonlyMap<string, RigidMotion>;
};

/** Stations nearer than this are one [mm]; motions that move nothing further than this are none. */
const NOTHING = 1e-6;

/** A member as it is after the changes, and how the place at a station of the old one has moved. */
type Relaid = {
  readonly member: MemberGeometry;
  readonly motionAt: (station: number) => RigidMotion;
  /** True where a saddle end no longer fits as it was cut: its weld has to be parted and made again. */
  readonly refitted: boolean;
  /** How far the far saddle of a bent member stands off its seat [mm]. */
  readonly off: number;
};

/** A frame with arcs changed: its members as they lie now, which of them are fitted again, and how places moved. */
export type RelaidFrame = {
  readonly members: readonly MemberGeometry[];
  readonly motionAt: CorrectedFrame['motionAt'];
  /** Members whose saddles have to be cut and welded again, and how far a bent one stays off its far seat [mm]. */
  readonly refitted: readonly { readonly member: string; readonly off: number }[];
};

/**
 * Lays a frame again with some of its arcs changed. A member that sits on no other stays where its first end is (the end
 * that it is bent from). One that sits on others goes with them: a straight one between two seats is laid from seat to
 * seat, a bent one keeps its shape.
 */
export function relaidFrame(frame: FrameGeometry, change: FrameChange): RelaidFrame {
  const known = new Map<string, Relaid>();
  // laid when it is asked for: a search looks at few members
  const relaid = (name: string): Relaid | undefined => {
    const member = frame.members.find((one) => one.name === name);
    return member === undefined ? undefined : relaidIn(frame, member, change, known);
  };
  return {
    get members() {
      return frame.members.map((member) => relaid(member.name)?.member ?? member);
    },
    motionAt: (member, station) => (known.get(member) ?? relaid(member))?.motionAt(station) ?? UNMOVED,
    get refitted() {
      return frame.members.flatMap(({ name }) => {
        const own = relaid(name);
        return own?.refitted === true ? [{ member: name, off: own.off }] : [];
      });
    },
  };
}

/**
 * A frame that was laid again as what a correction left, with its sizes as a tape finds them now.
 *
 * @param sized the wanted frame, whose sizes are taken, and the tube [mm]
 */
export function asCorrected(
  frame: FrameGeometry,
  { members, motionAt }: RelaidFrame,
  sized: { readonly wanted: FrameGeometry; readonly outsideDiameter: number },
): CorrectedFrame {
  const lines = frame.members.map((member, index) =>
    betweenFeet(frame, member, members[index]?.centreline ?? member.centreline),
  );
  // places of the wanted frame: its members end at their feet, as these lines do
  const checks = once(
    () =>
      frameMaker(sized.wanted, sizesOf(sized.wanted, sized.outsideDiameter))(lines, frame.planeNormal !== null).checks,
  );
  return {
    motionAt,
    members: lines.map((line, index) => ({ name: members[index]?.name ?? '', parts: [line] })),
    // measured only for those who look at it: where tubes lie is often all that is asked
    get checks() {
      return checks();
    },
  };
}

/** The whole frame as it is after the changes, its spots where they are now. */
export function relaidGeometry(frame: FrameGeometry, change: FrameChange): FrameGeometry {
  const { members, motionAt } = relaidFrame(frame, change);
  const carried = (spot: Spot): Spot => {
    const [old, own] = [frame, { members }].map((one) => one.members.find(({ name }) => name === spot.member));
    const station = old === undefined || own === undefined ? spot.station : stationNow(old, own, spot.station);
    return { member: spot.member, station, point: moved(motionAt(spot.member, spot.station), spot.point) };
  };
  const carriedCheck = (check: Check): Check => ({ ...check, from: carried(check.from), to: carried(check.to) });
  return {
    members,
    checks: frame.checks.map(carriedCheck),
    feet: frame.feet.map(carried),
    corners: frame.corners.map(carried),
    planeNormal: frame.planeNormal,
  };
}

/**
 * Where a place of a member is after its arcs were changed [mm]: bending stretches nothing, so that it keeps its station;
 * on a die bend its share of the bend. Where a straight member was laid anew, its share of the length.
 */
function stationNow(before: MemberGeometry, after: MemberGeometry, station: number): number {
  const { pieces } = before.centreline;
  if (pieces.length === 1) return (station / before.centreline.length) * after.centreline.length;
  let begin = 0;
  for (const [index, piece] of pieces.entries()) {
    const end = begin + piece.length;
    if (station <= end + NOTHING) {
      if (piece.kind === 'straight' || piece.made === 'rolled') return station;
      const now = pieceStations(after.centreline);
      const [from, to] = [now[index] ?? begin, now[index + 1] ?? end];
      return from + ((station - begin) / piece.length) * (to - from);
    }
    begin = end;
  }
  return station;
}

/** Lays one member, its partners first; members that sit on each other in a ring stay where they are. */
function relaidIn(frame: FrameGeometry, member: MemberGeometry, change: FrameChange, all: Map<string, Relaid>): Relaid {
  const known = all.get(member.name);
  if (known !== undefined) return known;
  const own = change.members.get(member.name);
  const bent = own === undefined ? member : relaidMember(member, own, change.fromFinish.has(member.name));
  const alone: Relaid = { member: bent, motionAt: ownMotion(member, bent), refitted: false, off: 0 };
  all.set(member.name, alone);
  const seatMotion = (end: EndGeometry): RigidMotion | null => {
    const partner = end.kind === 'saddle' ? frame.members.find(({ name }) => name === end.onto) : undefined;
    return end.kind !== 'saddle' || partner === undefined
      ? null
      : relaidIn(frame, partner, change, all).motionAt(end.station);
  };
  const [start, finish] = [seatMotion(member.start), seatMotion(member.finish)];
  const laid =
    start === null && finish === null
      ? carriedBy(alone, change.placed?.get(member.name) ?? UNMOVED, false, 0)
      : seated(member, alone, start, finish);
  all.set(member.name, laid);
  return laid;
}

/** How places of a member moved that was bent otherwise with its first end held. */
function ownMotion(before: MemberGeometry, after: MemberGeometry): (station: number) => RigidMotion {
  if (before === after) return () => UNMOVED;
  return (station) => {
    const from = tubeStand(before.centreline, station);
    const to = tubeStand(after.centreline, stationNow(before, after, station));
    return from === undefined || to === undefined ? UNMOVED : motionBetween(from, to);
  };
}

function seated(old: MemberGeometry, bent: Relaid, start: RigidMotion | null, finish: RigidMotion | null): Relaid {
  const whole = old.centreline.length;
  const endMotion = (motion: RigidMotion, station: number) => composed(motion, inverted(bent.motionAt(station)));
  const from = start === null ? null : endMotion(start, 0);
  const to = finish === null ? null : endMotion(finish, whole);
  const first = from ?? to ?? UNMOVED;
  if (from === null || to === null) return carriedBy(bent, first, false, 0);
  const ends = [placeAt(old.centreline, 0)?.point, placeAt(old.centreline, whole)?.point];
  const [a, b] = ends;
  if (a === undefined || b === undefined || start === null || finish === null) return bent;
  const [seatA, seatB] = [moved(start, a), moved(finish, b)];
  if (isOne(start, finish, [a, b])) return carriedBy(bent, first, bent.member !== old, 0);
  const [piece] = old.centreline.pieces;
  if (old.centreline.pieces.length === 1 && piece?.kind === 'straight')
    return laidToSeats(old, start, seatA, seatB) ?? bent;
  // a bent one keeps its shape: as it sits on its first seat, then laid onto both
  const own = { a: moved(first, moved(bent.motionAt(0), a)), b: moved(first, moved(bent.motionAt(whole), b)) };
  const onto = bestMotion([
    { from: own.a, to: seatA, weight: 1 },
    { from: own.b, to: seatB, weight: 1 },
  ]);
  const off = Math.max(length(subtract(moved(onto, own.a), seatA)), length(subtract(moved(onto, own.b), seatB)));
  return carriedBy(bent, composed(onto, first), true, off);
}

/** Whether two motions take the ends of a member to the same places, and turn it alike. */
const isOne = (one: RigidMotion, two: RigidMotion, points: readonly Vector3[]): boolean =>
  one === two ||
  (points.every((point) => length(subtract(moved(one, point), moved(two, point))) < NOTHING) &&
    length(subtract(one.x, two.x)) + length(subtract(one.y, two.y)) < NOTHING);

const carriedBy = (bent: Relaid, motion: RigidMotion, refitted: boolean, off: number): Relaid =>
  motion === UNMOVED
    ? bent
    : {
        member: withLine(bent.member, movedLine(motion, bent.member.centreline)),
        motionAt: (station) => composed(motion, bent.motionAt(station)),
        refitted,
        off,
      };

/** A straight cut to what is between its two seats; its places keep their share of the length. */
function laidToSeats(old: MemberGeometry, start: RigidMotion, seatA: Vector3, seatB: Vector3): Relaid | undefined {
  const first = tubeStand(old.centreline, 0);
  const laid = first === undefined ? undefined : laidBetween(seatA, seatB, movedStand(start, first));
  if (laid === undefined) return undefined;
  const member = withLine(old, laid.line);
  return {
    member,
    refitted: true,
    off: 0,
    motionAt: (station) => {
      const from = tubeStand(old.centreline, station);
      const to = standAt(laid, stationNow(old, member, station));
      return from === undefined || to === undefined ? UNMOVED : motionBetween(from, to);
    },
  };
}
