import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { alongBore, NEAR, type Bore, type SaddleHole } from './bores.ts';

/** A stretch of bore between two nodes: from node `a` at `from` to node `b` at `to`, stations along its bore [mm]. */
export type Tube = {
  readonly a: number;
  readonly b: number;
  /** Index of its bore in the chamber. */
  readonly bore: number;
  readonly from: number;
  readonly to: number;
};

/** A hole under a saddle end: from the node at the end of the branch to that on the main tube. */
export type Passage = { readonly a: number; readonly b: number };

/** The bores of a chamber as nodes, stretches between them, and holes. A stretch may lead back to its own node. */
export type BoreGraph = {
  readonly nodes: readonly { readonly bore: number; readonly station: number }[];
  readonly tubes: readonly Tube[];
  readonly passages: readonly Passage[];
};

type Place = { readonly member: number; readonly station: number };

/**
 * The graph of connected bores: nodes at their ends, at holes under saddles, and at the places given; a ring that has
 * none of them gets one where it begins.
 */
export function boreGraph(
  bores: readonly Bore[],
  members: readonly MemberGeometry[],
  holes: readonly SaddleHole[],
  places: readonly Place[],
): BoreGraph {
  const nodes: { bore: number; station: number }[] = [];
  const tubes: Tube[] = [];
  const firsts: number[] = [];
  for (const [index, bore] of bores.entries()) {
    firsts.push(nodes.length);
    const member = members[bore.member];
    if (member === undefined) continue;
    const stations = nodesAlong(bore, member, holes, places);
    const first = nodes.length;
    for (const station of stations) nodes.push({ bore: index, station });
    for (let at = 1; at < stations.length; at += 1)
      tubes.push({
        a: first + at - 1,
        b: first + at,
        bore: index,
        from: stations[at - 1] ?? 0,
        to: stations[at] ?? 0,
      });
    const last = stations.length - 1;
    if (bore.ring)
      tubes.push({
        a: first + last,
        b: first,
        bore: index,
        from: stations[last] ?? 0,
        to: (stations[0] ?? 0) + member.centreline.length,
      });
  }
  const graph = { nodes, tubes, passages: [] };
  const passages = holes.flatMap((hole): Passage[] => {
    const a = nodeAt(graph, bores, members, { member: hole.branch, station: hole.station });
    const b = nodeAt(graph, bores, members, { member: hole.main, station: hole.at });
    return a === undefined || b === undefined ? [] : [{ a, b }];
  });
  return { nodes, tubes, passages };
}

/** Stations of the nodes of one bore, in order; those nearer to each other than a tape reads are one. */
function nodesAlong(
  bore: Bore,
  member: MemberGeometry,
  holes: readonly SaddleHole[],
  places: readonly Place[],
): number[] {
  const { length } = member.centreline;
  const found: number[] = bore.ring ? [] : [bore.from, bore.to];
  const look = (station: number): void => {
    const along = alongBore(bore, member, station);
    if (along !== undefined) found.push(along);
  };
  for (const hole of holes) {
    if (hole.branch === bore.member) look(hole.station);
    if (hole.main === bore.member) look(hole.at);
  }
  for (const place of places) if (place.member === bore.member) look(place.station);
  if (found.length === 0) return [0];
  found.sort((a, b) => a - b);
  const near = Math.min(NEAR, (bore.to - bore.from) / 4);
  const kept = found.filter((station, index) => index === 0 || station - (found[index - 1] ?? station) > near);
  if (bore.ring) {
    const [first, last] = [kept[0] ?? 0, kept.at(-1) ?? 0];
    if (kept.length > 1 && first + length - last <= near) kept.pop();
    return kept;
  }
  // the ends stay where they are, whatever stands beside them
  return [bore.from, ...kept.slice(1).filter((station) => bore.to - station > near), bore.to];
}

/** The node at a place; of two bores that touch there the first. Undefined where the chamber does not reach it. */
export function nodeAt(
  { nodes }: Pick<BoreGraph, 'nodes'>,
  bores: readonly Bore[],
  members: readonly MemberGeometry[],
  { member, station }: Place,
): number | undefined {
  const geometry = members[member];
  if (geometry === undefined) return undefined;
  let best: number | undefined;
  let least = Infinity;
  for (const [index, node] of nodes.entries()) {
    const bore = bores[node.bore];
    if (bore === undefined || bore.member !== member) continue;
    const along = alongBore(bore, geometry, station);
    if (along === undefined) continue;
    const apart = Math.abs(along - node.station);
    const distance = bore.ring ? Math.min(apart, geometry.centreline.length - apart) : apart;
    if (distance < least) {
      least = distance;
      best = index;
    }
  }
  return best;
}

/** Length of a stretch [mm]. */
export const tubeLength = ({ from, to }: Tube): number => to - from;

/**
 * Distance along the bores from the nearest of some nodes to each node [mm]; infinite where there is no way.
 *
 * @param usable tubes and holes that may be gone through, by index, the holes after the tubes; left out: all
 * @param lengthOf what counts as the length of a stretch [mm]; left out: all of it
 */
export function distances(
  { nodes, tubes, passages }: BoreGraph,
  sources: readonly number[],
  usable: (edge: number) => boolean = () => true,
  lengthOf: (tube: Tube) => number = tubeLength,
): number[] {
  const far = nodes.map(() => Infinity);
  for (const source of sources) far[source] = 0;
  const edges = [
    ...tubes.map((tube) => ({ a: tube.a, b: tube.b, length: lengthOf(tube) })),
    ...passages.map(({ a, b }) => ({ a, b, length: 0 })),
  ].filter((_, edge) => usable(edge));
  // as often as anything gets nearer; chambers have a few dozen edges
  for (let nearer = true; nearer;) {
    nearer = false;
    for (const { a, b, length } of edges) {
      const [at, to] = [far[a] ?? Infinity, far[b] ?? Infinity];
      if (at + length < to) {
        far[b] = at + length;
        nearer = true;
      } else if (to + length < at) {
        far[a] = to + length;
        nearer = true;
      }
    }
  }
  return far;
}
