import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { cross, dot, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { chainOf, type Chain, type Stand } from '../geometry/chain.ts';
import { standAt } from '../geometry/laid-line.ts';
import {
  chainParameters,
  seatParameters,
  standParameters,
  turnParameters,
  type Parameter,
  type Scatter,
} from './parameters.ts';
import { placeAtStation, type Place } from './tube-places.ts';

/** Where an end sits: on which member, at which place of it, how that stood, and where the end was, as wanted. */
export type SeatAt = {
  readonly partner: number;
  readonly place: Place;
  readonly stood: Stand;
  readonly end: Vector3;
};

/** How a member finds its place. `against`: the partners run against each other, so that up one is down the other. */
export type Seat =
  | { readonly kind: 'stands'; readonly pivot: Vector3 }
  | { readonly kind: 'one'; readonly side: 'start' | 'finish'; readonly at: SeatAt }
  | { readonly kind: 'two'; readonly start: SeatAt; readonly finish: SeatAt; readonly against: 1 | -1 };

export type MemberModel = {
  readonly chain: Chain;
  readonly seat: Seat;
  readonly closed: boolean;
  /** Its parameters, and where they begin among those of the frame. */
  readonly own: readonly Parameter[];
  readonly first: number;
};

/** A frame with everything that can have come back otherwise. */
export type FrameModel = {
  readonly wanted: FrameGeometry;
  readonly members: readonly MemberModel[];
  readonly parameters: readonly Parameter[];
  /** Members in the order in which they are laid, and for each what has to be laid again after it, itself first. */
  readonly order: readonly number[];
  readonly after: readonly (readonly number[])[];
  /** Two directions of the plane and its normal; the axes of a frame in space. */
  readonly axes: { readonly x: Vector3; readonly y: Vector3; readonly z: Vector3 };
  readonly flat: boolean;
};

/** Fewer than this share of two directions in common and neither says which way is up on the other; our own choice. */
const ALIKE = 0.5;

/**
 * The wanted frame with all deviations that it can have. Members that sit on no other stand first; the others are laid
 * on what they sit on.
 *
 * @param asks flat: nothing that was read tells a flat frame from a twisted one; radii of die bends that were measured
 */
export function frameModel(
  wanted: FrameGeometry,
  asks: { flat: boolean; scatter: Scatter; freeRadii: ReadonlyMap<number, ReadonlySet<number>> },
): FrameModel | undefined {
  const { scatter } = asks;
  const flat = asks.flat && wanted.planeNormal !== null;
  const chains = wanted.members.map(({ centreline }) => chainOf(centreline, wanted.planeNormal));
  const found = ordered(wanted);
  const parameters: Parameter[] = [];
  const members: MemberModel[] = [];
  let stands = 0;
  for (const [index, member] of wanted.members.entries()) {
    const chain = chains[index];
    if (chain === undefined) return undefined;
    const seat = seatOf(index, wanted, chains, found.cut.has(index));
    const { pieces } = member.centreline;
    const freeRadii = asks.freeRadii.get(index) ?? new Set<number>();
    const bent = pieces.some(({ kind }) => kind === 'arc');
    const between = seat.kind === 'two' && !bent;
    const own = [
      ...(between ? [] : chainParameters(index, pieces, { scatter, closed: member.closed, flat, freeRadii })),
      ...(seat.kind === 'stands' && stands > 0 ? standParameters(index, flat, scatter) : []),
      ...(seat.kind === 'one' ? turnParameters(index, flat, scatter) : []),
      ...(seat.kind === 'stands' ? [] : seatParameters(index, seat.kind === 'two', levelled(seat), scatter)),
    ];
    if (seat.kind === 'stands') stands += 1;
    members.push({ chain, seat, closed: member.closed, own, first: parameters.length });
    parameters.push(...own);
  }
  return {
    wanted,
    members,
    parameters,
    order: found.order,
    after: afterEach(members, found.order),
    axes: axesOf(wanted),
    flat,
  };
}

const partnerOf = (wanted: FrameGeometry, member: MemberGeometry, side: 'start' | 'finish'): number => {
  const end = member[side];
  return end.kind === 'saddle' ? wanted.members.findIndex(({ name }) => name === end.onto) : -1;
};

const partnersOf = (wanted: FrameGeometry, member: MemberGeometry): number[] =>
  [partnerOf(wanted, member, 'start'), partnerOf(wanted, member, 'finish')].filter((partner) => partner >= 0);

/** An order in which every member follows those it sits on; where they sit on each other in a round, one stands. */
function ordered(wanted: FrameGeometry): { order: number[]; cut: ReadonlySet<number> } {
  const order: number[] = [];
  const cut = new Set<number>();
  const left = new Set(wanted.members.keys());
  while (left.size > 0) {
    const free = [...left].filter((index) => {
      const member = wanted.members[index];
      return member !== undefined && partnersOf(wanted, member).every((partner) => !left.has(partner));
    });
    const [first] = left;
    if (free.length === 0 && first !== undefined) {
      cut.add(first);
      free.push(first);
    }
    for (const index of free) {
      left.delete(index);
      order.push(index);
    }
  }
  return { order, cut };
}

function seatOf(
  index: number,
  wanted: FrameGeometry,
  chains: readonly (Chain | undefined)[],
  standsAlone: boolean,
): Seat {
  const member = wanted.members[index];
  const pivot = chains[index]?.start.point ?? { x: 0, y: 0, z: 0 };
  if (member === undefined || standsAlone) return { kind: 'stands', pivot };
  const start = seatAt(member, 'start', wanted, chains);
  const finish = seatAt(member, 'finish', wanted, chains);
  if (start !== undefined && finish !== undefined) {
    const same = dot(start.stood.direction, finish.stood.direction);
    return { kind: 'two', start, finish, against: same < 0 ? -1 : 1 };
  }
  if (start !== undefined) return { kind: 'one', side: 'start', at: start };
  return finish === undefined ? { kind: 'stands', pivot } : { kind: 'one', side: 'finish', at: finish };
}

function seatAt(
  member: MemberGeometry,
  side: 'start' | 'finish',
  wanted: FrameGeometry,
  chains: readonly (Chain | undefined)[],
): SeatAt | undefined {
  const end = member[side];
  const partner = partnerOf(wanted, member, side);
  const on = wanted.members[partner];
  const chain = chains[partner];
  if (end.kind !== 'saddle' || on === undefined || chain === undefined) return undefined;
  const stood = standAt({ line: on.centreline, normal: chain.start.normal }, end.station);
  const place = seatPlace(wanted, partner, end.station);
  const own = standAt(
    { line: member.centreline, normal: chain.start.normal },
    side === 'start' ? 0 : member.centreline.length,
  );
  if (stood === undefined || place === undefined || own === undefined) return undefined;
  return { partner, place, stood, end: own.point };
}

/**
 * Where a seat is counted from: on the first and last straight of a bent tube from the bend, so that a bar between two
 * legs that came out unlike stays as far below their corners.
 */
function seatPlace(wanted: FrameGeometry, partner: number, station: number): Place | undefined {
  const place = placeAtStation(wanted, partner, station);
  const pieces = wanted.members[partner]?.centreline.pieces ?? [];
  const piece = place === undefined ? undefined : pieces[place.piece];
  if (place === undefined || piece === undefined || pieces.length < 2 || place.by === 'share') return place;
  const amount = piece.length - place.amount;
  return { ...place, by: place.by === 'from-start' ? 'from-end' : 'from-start', amount };
}

/** Whether the two partners say what level is for a member between them. */
const levelled = (seat: Seat): boolean =>
  seat.kind === 'two' && Math.abs(dot(seat.start.stood.direction, seat.finish.stood.direction)) > ALIKE;

/** For each member, itself and all that have to be laid again after it, in the order of laying. */
function afterEach(members: readonly MemberModel[], order: readonly number[]): number[][] {
  return members.map((_, index) => {
    const changed = new Set([index]);
    for (const other of order) {
      const seat = members[other]?.seat;
      if (seat === undefined || seat.kind === 'stands') continue;
      const on = seat.kind === 'one' ? [seat.at.partner] : [seat.start.partner, seat.finish.partner];
      if (on.some((partner) => changed.has(partner))) changed.add(other);
    }
    return order.filter((other) => changed.has(other));
  });
}

function axesOf({ planeNormal, members }: FrameGeometry): FrameModel['axes'] {
  const world = { x: { x: 1, y: 0, z: 0 }, y: { x: 0, y: 1, z: 0 }, z: { x: 0, y: 0, z: 1 } };
  const along = members[0]?.centreline.pieces[0]?.direction;
  if (planeNormal === null || along === undefined) return world;
  const x = unit(subtract(along, scale(planeNormal, dot(along, planeNormal))));
  return x === undefined ? world : { x, y: cross(planeNormal, x), z: planeNormal };
}
