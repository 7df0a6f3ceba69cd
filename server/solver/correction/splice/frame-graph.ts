import { DisjointSets } from '../../disjoint-sets.ts';
import { isDieBend } from '../../geometry/centreline.ts';
import type { FrameGeometry, MemberGeometry } from '../../frame/frame-geometry.ts';
import { pieceStations } from '../../geometry/slice.ts';

/** An end of one member that is welded on another. */
export type Node = {
  /** The member that sits, and at which of its stations (0 or its length). */
  readonly sitting: number;
  readonly end: number;
  /** The member that it sits on, and where. */
  readonly main: number;
  readonly station: number;
};

/** A stretch of a member from one free end, weld or die bend to the next. Welds share a vertex; a bend has its own. */
export type Edge = {
  readonly member: number;
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly finish: number;
};

/** A frame as a graph: stretches of tube between free ends, welds and bends. */
export type FrameGraph = {
  readonly members: readonly MemberGeometry[];
  readonly nodes: readonly Node[];
  readonly edges: readonly Edge[];
  readonly vertices: number;
};

/** Two places on one member nearer than this are one [mm]. */
const SAME_PLACE = 1e-6;

/** Reads the graph of a frame from its saddles. A closed member has no end of its own. */
export function frameGraph({ members }: Pick<FrameGeometry, 'members'>): FrameGraph {
  const indexOf = new Map(members.map(({ name }, index) => [name, index]));
  const nodes: Node[] = [];
  for (const [sitting, member] of members.entries()) {
    for (const [end, geometry] of [
      [0, member.start],
      [member.centreline.length, member.finish],
    ] as const) {
      const main = geometry.kind === 'saddle' ? indexOf.get(geometry.onto) : undefined;
      if (geometry.kind === 'saddle' && main !== undefined)
        nodes.push({ sitting, end, main, station: geometry.station });
    }
  }
  const joined = new DisjointSets();
  const placesOf = members.map(() => new Map<number, number>());
  const vertexAt = (member: number, station: number): number => {
    const places = placesOf[member] ?? new Map<number, number>();
    for (const [at, vertex] of places) if (Math.abs(at - station) < SAME_PLACE) return vertex;
    const vertex = joined.added();
    places.set(station, vertex);
    return vertex;
  };
  for (const [index, member] of members.entries()) {
    if (member.closed) continue;
    vertexAt(index, 0);
    vertexAt(index, member.centreline.length);
  }
  for (const { sitting, end, main, station } of nodes) joined.join(vertexAt(sitting, end), vertexAt(main, station));
  for (const [index, { centreline }] of members.entries()) {
    const stations = pieceStations(centreline);
    for (const [number, piece] of centreline.pieces.entries()) {
      if (isDieBend(piece)) vertexAt(index, (stations[number] ?? 0) + piece.length / 2);
    }
  }
  const edges: Edge[] = [];
  for (const [member, { closed, centreline }] of members.entries()) {
    const places = [...(placesOf[member] ?? [])].sort(([a], [b]) => a - b);
    for (const [index, [from, vertex]] of places.entries()) {
      const next = places[index + 1] ?? (closed ? places[0] : undefined);
      if (next === undefined) continue;
      // the last stretch of a closed member goes on over its datum
      const to = next[0] > from ? next[0] : next[0] + centreline.length;
      edges.push({ member, from, to, start: joined.of(vertex), finish: joined.of(next[1]) });
    }
    if (closed && places.length === 0) {
      const alone = joined.added();
      edges.push({ member, from: 0, to: centreline.length, start: alone, finish: alone });
    }
  }
  return { members, nodes, edges, vertices: joined.count };
}

/** A cut through a member [mm]: everything before it may part from everything behind it. */
export type Cut = { readonly member: number; readonly station: number };

/** What stays in one piece after some cuts. */
export type Bodies = {
  readonly count: number;
  /** The body that the tube belongs to at a station of a member. */
  readonly at: (member: number, station: number) => number;
};

/** The bodies that cuts leave; numbered as they are met, member by member. */
export function bodiesAfter({ members, nodes }: FrameGraph, cuts: readonly Cut[]): Bodies {
  const stations = members.map((_, member) =>
    cuts.flatMap((cut) => (cut.member === member ? [cut.station] : [])).sort((a, b) => a - b),
  );
  const joined = new DisjointSets();
  const parts = stations.map((own, member) => {
    const open = [...own, Infinity].map(() => joined.added());
    const [first, last] = [open[0], open.at(-1)];
    if (members[member]?.closed === true && first !== undefined && last !== undefined) joined.join(first, last);
    return open;
  });
  const partAt = (member: number, station: number): number => {
    const own = stations[member] ?? [];
    let index = 0;
    while (index < own.length && (own[index] ?? Infinity) < station) index += 1;
    return parts[member]?.[index] ?? 0;
  };
  for (const { sitting, end, main, station } of nodes) joined.join(partAt(sitting, end), partAt(main, station));
  const numbers = new Map<number, number>();
  for (const part of parts.flat()) {
    const root = joined.of(part);
    if (!numbers.has(root)) numbers.set(root, numbers.size);
  }
  return {
    count: numbers.size,
    at: (member, station) => numbers.get(joined.of(partAt(member, station))) ?? 0,
  };
}
