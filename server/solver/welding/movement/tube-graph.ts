import { DisjointSets } from '../../disjoint-sets.ts';
import type { MemberGeometry } from '../../frame/frame-geometry.ts';

/** A place on a member of the frame [mm]. */
export type MemberPlace = { readonly member: string; readonly station: number };

/** Tube of one member between two vertices, by its stations [mm]. */
export type Stretch = {
  readonly member: number;
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly finish: number;
};

/**
 * A tacked frame as a graph: stretches of tube between places where it ends, where tubes sit on each other, or that
 * are asked about.
 */
export type TubeGraph = {
  readonly stretches: readonly Stretch[];
  readonly vertices: number;
  /** The vertex at a place that was asked about; undefined for a member that the frame does not have. */
  readonly vertexAt: (place: MemberPlace) => number | undefined;
  /** The stretch that begins at a place or runs through it, or ends there at a finish; undefined where no tube is. */
  readonly stretchAt: (place: MemberPlace) => number | undefined;
};

/** Two places on one member nearer than this are one [mm]. */
const SAME_PLACE = 1e-6;

/**
 * Reads the graph of a frame. A saddle is one vertex: its end and its seat are held together rigidly, also where the
 * two axes pass each other at a distance.
 *
 * @param asked places that get a vertex of their own
 */
export function tubeGraph(members: readonly MemberGeometry[], asked: readonly MemberPlace[]): TubeGraph {
  const indexOf = new Map(members.map(({ name }, index) => [name, index]));
  const stations = members.map(({ centreline, closed }) => (closed ? [0] : [0, centreline.length]));
  const onTube = (member: number, station: number): number => {
    const { centreline, closed } = members[member] ?? { centreline: { length: 0 }, closed: false };
    const within = Math.min(centreline.length, Math.max(0, station));
    return closed && within > centreline.length - SAME_PLACE ? 0 : within;
  };
  const seats = members.flatMap((member, sitting) =>
    (['start', 'finish'] as const).flatMap((end) => {
      const seat = member[end];
      const main = seat.kind === 'saddle' ? indexOf.get(seat.onto) : undefined;
      if (seat.kind !== 'saddle' || main === undefined) return [];
      return [
        { sitting, end: end === 'start' ? 0 : member.centreline.length, main, station: onTube(main, seat.station) },
      ];
    }),
  );
  for (const { main, station } of seats) stations[main]?.push(station);
  for (const { member, station } of asked) {
    const index = indexOf.get(member);
    if (index !== undefined) stations[index]?.push(onTube(index, station));
  }
  const sorted = stations.map((own) =>
    own.sort((a, b) => a - b).filter((at, index) => index === 0 || at - (own[index - 1] ?? 0) > SAME_PLACE),
  );
  let count = 0;
  const firsts = sorted.map((own) => {
    count += own.length;
    return count - own.length;
  });
  const sets = new DisjointSets(count);
  const placeOf = (member: number, station: number): number => {
    const own = sorted[member] ?? [];
    let nearest = 0;
    for (const [index, at] of own.entries())
      if (Math.abs(at - station) < Math.abs((own[nearest] ?? 0) - station)) nearest = index;
    return (firsts[member] ?? 0) + nearest;
  };
  for (const { sitting, end, main, station } of seats) sets.join(placeOf(sitting, end), placeOf(main, station));
  const numbers = new Map<number, number>();
  for (let vertex = 0; vertex < count; vertex += 1) {
    const set = sets.of(vertex);
    if (!numbers.has(set)) numbers.set(set, numbers.size);
  }
  const vertexOf = (place: number): number => numbers.get(sets.of(place)) ?? 0;
  const stretches: Stretch[] = [];
  const firstStretch = sorted.map((own, member) => {
    const begun = stretches.length;
    const first = firsts[member] ?? 0;
    const { centreline, closed } = members[member] ?? { centreline: { length: 0 }, closed: false };
    for (const [index, from] of own.entries()) {
      const last = index === own.length - 1;
      if (last && !closed) continue;
      const to = last ? centreline.length : (own[index + 1] ?? from);
      if (to - from <= SAME_PLACE) continue;
      stretches.push({
        member,
        from,
        to,
        start: vertexOf(first + index),
        finish: vertexOf(last ? first : first + index + 1),
      });
    }
    return { begun, ended: stretches.length };
  });
  return {
    stretches,
    vertices: numbers.size,
    vertexAt: ({ member, station }) => {
      const index = indexOf.get(member);
      return index === undefined ? undefined : vertexOf(placeOf(index, onTube(index, station)));
    },
    stretchAt: ({ member, station }) => {
      const index = indexOf.get(member);
      const own = index === undefined ? undefined : firstStretch[index];
      if (index === undefined || own === undefined || own.begun === own.ended) return undefined;
      const at = onTube(index, station);
      let found = own.begun;
      for (let number = own.begun; number < own.ended; number += 1)
        if ((stretches[number]?.from ?? 0) <= at + SAME_PLACE) found = number;
      return found;
    },
  };
}
