import type { GasSpot } from '../../plan/purge.ts';
import { DisjointSets } from '../disjoint-sets.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';

/** Places this near to each other along a tube are one: finer than a tape reads [mm]. */
export const NEAR = 0.1;

/**
 * Bore that is looked at in one piece: all of a member's, or what lies between two dams. Stations [mm]; on a closed
 * member `to` may lie beyond its length, where the bore runs on over the seam.
 */
export type Bore = {
  /** Index of the member in the frame. */
  readonly member: number;
  readonly from: number;
  readonly to: number;
  /** All of a closed member: it has no ends, and `to` is its length. */
  readonly ring: boolean;
  /** Whether a dam bounds it there. */
  readonly dams: { readonly from: boolean; readonly to: boolean };
};

/** A hole through the wall under a saddle end: from the end of a branch into the bore of the main tube, both by index. */
export type SaddleHole = {
  readonly branch: number;
  readonly station: number;
  readonly main: number;
  readonly at: number;
};

/** Where gas can pass between a bore and the air. */
export type Opening = {
  readonly kind: GasSpot['kind'];
  readonly member: number;
  readonly station: number;
  /** Of the vent that it makes [mm]. */
  readonly bore: number;
  /** Weld whose gap it is, number of the vent hole, or nothing. */
  readonly name: string;
  /** Along the direction that points up, from the frame's origin [mm]. */
  readonly height: number;
  /** Openings of the tube that a hose comes through to a dam; none for the others. */
  readonly beyond: readonly Opening[];
};

/** A spot of one bore that a weld heats; `weld` by index. */
export type Site = { readonly weld: number; readonly member: number; readonly station: number };

/** Where a station lies along a bore, on this side of the seam or beyond it; undefined where it is not in it. */
export function alongBore(bore: Bore, { closed, centreline }: MemberGeometry, station: number): number | undefined {
  const { length } = centreline;
  if (bore.ring) return length > 0 ? ((station % length) + length) % length : 0;
  for (const seen of closed ? [station, station + length, station - length] : [station])
    if (seen >= bore.from - NEAR && seen <= bore.to + NEAR) return Math.min(bore.to, Math.max(bore.from, seen));
  return undefined;
}

/** Every member's bore, as it is without dams. */
export const wholeBores = (members: readonly MemberGeometry[]): Bore[] =>
  members.map(({ closed, centreline }, member) => ({
    member,
    from: 0,
    to: centreline.length,
    ring: closed,
    dams: { from: false, to: false },
  }));

/** Bores that holes connect: groups of indices, each in order, in the order of their first. */
export function connectedBores(
  bores: readonly Bore[],
  holes: readonly SaddleHole[],
  members: readonly MemberGeometry[],
): number[][] {
  const sets = new DisjointSets(bores.length);
  for (const hole of holes) {
    const one = boreAt(bores, members, hole.branch, hole.station);
    const other = boreAt(bores, members, hole.main, hole.at);
    if (one !== undefined && other !== undefined) sets.join(one, other);
  }
  const groups = new Map<number, number[]>();
  for (const index of bores.keys()) {
    const set = sets.of(index);
    const known = groups.get(set);
    if (known === undefined) groups.set(set, [index]);
    else known.push(index);
  }
  return [...groups.values()];
}

/** The bore that a place is in, by index; of two that touch there the first. */
export function boreAt(
  bores: readonly Bore[],
  members: readonly MemberGeometry[],
  member: number,
  station: number,
): number | undefined {
  const geometry = members[member];
  if (geometry === undefined) return undefined;
  const found = bores.findIndex((bore) => bore.member === member && alongBore(bore, geometry, station) !== undefined);
  return found < 0 ? undefined : found;
}
