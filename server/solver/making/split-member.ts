import type { Centreline } from '../geometry/centreline.ts';
import { pieceStations, sliceCentreline } from '../geometry/slice.ts';
import type { DieBend } from './machine-envelope.ts';
import type { MakingInput, WayToBend } from './way-to-bend.ts';
import { bestWay, waysToBend } from './ways-to-bend.ts';

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

type Place = { readonly station: number; readonly margin: number };

/**
 * Where a member that cannot be bent whole is best cut in two: the joint stands in a straight between two die bends, at
 * its middle, or where that does not do, at either end of the stretch that is far enough from both bends.
 *
 * Of the places where both halves can be bent, from whichever of their ends and on whichever side, the one farthest from its nearest
 * bend is taken, of equal ones the one nearest to the member's middle. A ring is open at its datum, which is a joint of
 * its own.
 *
 * @param keepOut least straight between the joint and a bend [mm], JOINT_KEEP_OUT diameters by common practice
 * @returns null where no place does
 */
export function splitMember(input: MakingInput, keepOut: number): SplitMember | null {
  for (const place of places(input, keepOut)) {
    const { station, margin } = place;
    const first = halfOf(input, 0, station);
    if (first === null) continue;
    const second = halfOf(input, station, input.centreline.length);
    if (second === null) continue;
    return { station, margin, halves: [first, second] };
  }
  return null;
}

function places({ centreline, bends }: MakingInput, keepOut: number): Place[] {
  const stations = pieceStations(centreline);
  const first = bends[0]?.piece ?? Infinity;
  const last = bends.at(-1)?.piece ?? -Infinity;
  const found: Place[] = [];
  for (const [index, piece] of centreline.pieces.entries()) {
    if (piece.kind !== 'straight' || index < first || index > last || piece.length < 2 * keepOut) continue;
    const begin = stations[index] ?? 0;
    found.push({ station: begin + piece.length / 2, margin: piece.length / 2 });
    if (piece.length === 2 * keepOut) continue;
    found.push({ station: begin + keepOut, margin: keepOut });
    found.push({ station: begin + piece.length - keepOut, margin: keepOut });
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
  const way = bestWay(waysToBend(half));
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
