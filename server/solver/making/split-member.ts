import type { Centreline } from '../geometry/centreline.ts';
import { pieceStations, sliceCentreline } from '../geometry/slice.ts';
import type { DieBend } from './machine-envelope.ts';
import { isBlocking, type MakingInput, type WayToBend } from './way-to-bend.ts';
import { bestWay, otherWays, plannedWay } from './ways-to-bend.ts';

/**
 * Straight between a joint and the bends beside it, in diameters: room for the saw's clamp, the torch and a polishing
 * belt. Common practice, no source.
 */
export const JOINT_KEEP_OUT = 1.5;

/** A member in two pieces with a joint in a straight [mm]. */
export type SplitMember = {
  /** Where the joint is, from the member's datum end, and how far the nearer bend is from it. */
  readonly station: number;
  readonly margin: number;
  /** The two pieces in the member's order, each with its own length and the way it is bent. */
  readonly halves: readonly [SplitHalf, SplitHalf];
};

export type SplitHalf = { readonly length: number; readonly bends: readonly DieBend[]; readonly way: WayToBend };

type Place = { readonly station: number; readonly margin: number; readonly arcsBefore: number };

/**
 * Above this many die bends only places are taken whose halves are known to be possible from the ways that were tried
 * whole; below it every half is tried from all its ends and sides. Our own choice, so that an answer comes as one types.
 */
const TRIED_ALL = 12;

/**
 * Where a member that cannot be bent whole is best cut in two: the joint stands in a straight between two die bends, at
 * its middle, or where that does not do, at either end of the stretch that is far enough from both bends.
 *
 * What goes well up to a bend goes well for the piece that ends before it: the same part swings, with less tube behind.
 * So a place does where one whole way gets as far as it from the start, and another from the finish. Of the places that
 * do, the one farthest from its nearest bend is taken, of equal ones the one nearest to the member's middle. A ring is
 * open at its datum, which is a joint of its own.
 *
 * @param ways what came of bending it whole
 * @param keepOut least straight between the joint and a bend [mm], JOINT_KEEP_OUT diameters by common practice
 * @returns null where no such place was found
 */
export function splitMember(input: MakingInput, ways: readonly WayToBend[], keepOut: number): SplitMember | null {
  const all = places(input, keepOut);
  const arcs = input.centreline.pieces.filter(({ kind }) => kind === 'arc').length;
  const ahead = reached(ways, false, arcs);
  const back = reached(ways, true, arcs);
  const known = all.find(({ arcsBefore }) => arcsBefore <= ahead && arcs - arcsBefore <= back);
  const split = known === undefined ? null : splitAt(input, known);
  if (split !== null) return split;
  if (input.bends.length > TRIED_ALL) return null;
  for (const place of all) {
    const tried = splitAt(input, place);
    if (tried !== null) return tried;
  }
  return null;
}

/** Arcs that the best of the ways from one end gets through before it is blocked. */
const reached = (ways: readonly WayToBend[], fromOtherEnd: boolean, arcs: number): number =>
  Math.max(
    0,
    ...ways
      .filter((way) => way.fromOtherEnd === fromOtherEnd)
      .map(({ problems }) => Math.min(arcs, ...problems.filter(isBlocking).map(({ bend }) => bend - 1))),
  );

function splitAt(input: MakingInput, { station, margin }: Place): SplitMember | null {
  const first = halfOf(input, 0, station);
  if (first === null) return null;
  const second = halfOf(input, station, input.centreline.length);
  return second === null ? null : { station, margin, halves: [first, second] };
}

function places({ centreline, bends }: MakingInput, keepOut: number): Place[] {
  const stations = pieceStations(centreline);
  const first = bends[0]?.piece ?? Infinity;
  const last = bends.at(-1)?.piece ?? -Infinity;
  const found: Place[] = [];
  let arcsBefore = 0;
  for (const [index, piece] of centreline.pieces.entries()) {
    if (piece.kind === 'arc') arcsBefore += 1;
    if (piece.kind !== 'straight' || index < first || index > last || piece.length < 2 * keepOut) continue;
    const begin = stations[index] ?? 0;
    found.push({ station: begin + piece.length / 2, margin: piece.length / 2, arcsBefore });
    if (piece.length === 2 * keepOut) continue;
    found.push({ station: begin + keepOut, margin: keepOut, arcsBefore });
    found.push({ station: begin + piece.length - keepOut, margin: keepOut, arcsBefore });
  }
  const off = ({ station }: Place): number => Math.abs(station - centreline.length / 2);
  return found.sort((a, b) => b.margin - a.margin || off(a) - off(b));
}

function halfOf(input: MakingInput, from: number, to: number): SplitHalf | null {
  const centreline = sliceCentreline(input.centreline, from, to);
  const bends = bendsOf(input, centreline, from);
  const half: MakingInput = {
    centreline,
    closed: false,
    bends,
    throatAtStart: from === 0 ? input.throatAtStart : 0,
    throatAtFinish: to === input.centreline.length ? input.throatAtFinish : 0,
    machine: input.machine,
  };
  const planned = plannedWay(half);
  const way = planned.possible ? planned : bestWay(otherWays(half));
  return way === undefined ? null : { length: centreline.length, bends, way };
}

/** The member's die bends that lie in a part of it that begins at a station [mm], numbered and indexed within the part. */
function bendsOf(input: MakingInput, part: Centreline, from: number): DieBend[] {
  const stations = pieceStations(input.centreline);
  const skipped = input.centreline.pieces.findIndex((_, index) => (stations[index + 1] ?? 0) > from + 1e-9);
  const arcsBefore = input.centreline.pieces.slice(0, skipped).filter((piece) => piece.kind === 'arc').length;
  const inside = input.bends.filter(({ piece }) => piece >= skipped && piece < skipped + part.pieces.length);
  return inside.map(({ number, piece, command, dieRadius }): DieBend => {
    return { number: number - arcsBefore, piece: piece - skipped, command, dieRadius };
  });
}
