import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { alongBore, type Bore, type Opening, type SaddleHole, type Site } from './bores.ts';

type Place = { readonly member: number; readonly station: number };
type Interval = { from: number; to: number };

/**
 * Pockets between dams at a distance [mm] either side of each place that a weld heats; those that overlap are one. Where
 * a hole under a saddle lies in a pocket, the bore on its other side gets one as well, or the gas would be lost there. A
 * dam beyond an end is left out: the end bounds the pocket.
 */
export function damPockets(
  sites: readonly Site[],
  holes: readonly SaddleHole[],
  members: readonly MemberGeometry[],
  distance: number,
): Bore[] {
  const places = withBothSides(sites, holes, members, distance);
  return members.flatMap((member, index): Bore[] => {
    const own = places.flatMap((place) => (place.member === index ? [place.station] : []));
    if (own.length === 0) return [];
    const { length } = member.centreline;
    const pocket = ({ from, to }: Interval): Bore => {
      const dams = { from: member.closed || from > 0, to: member.closed || to < length };
      return { member: index, from, to, ring: false, dams };
    };
    if (!member.closed)
      return overlapping(
        own.map((station) => ({ from: Math.max(0, station - distance), to: Math.min(length, station + distance) })),
      ).map(pocket);
    const round = overlappingRound(own, length, distance);
    return round === null
      ? [{ member: index, from: 0, to: length, ring: true, dams: { from: false, to: false } }]
      : round.map(pocket);
  });
}

/** Intervals that overlap or touch, as one; in order. */
function overlapping(intervals: readonly Interval[]): Interval[] {
  const merged: Interval[] = [];
  for (const { from, to } of [...intervals].sort((a, b) => a.from - b.from)) {
    const last = merged.at(-1);
    if (last !== undefined && from <= last.to) last.to = Math.max(last.to, to);
    else merged.push({ from, to });
  }
  return merged;
}

/** Likewise round a closed member; the last may run on over the seam. Null where they fill all of it. */
function overlappingRound(stations: readonly number[], length: number, distance: number): Interval[] | null {
  if (2 * distance >= length) return null;
  const begin = (station: number): number => (((station - distance) % length) + length) % length;
  const merged = overlapping(stations.map((station) => ({ from: begin(station), to: begin(station) + 2 * distance })));
  for (;;) {
    const [first] = merged;
    const last = merged.at(-1);
    if (first === undefined || last === undefined || last.to < first.from + length) return merged;
    if (merged.length === 1) return null;
    last.to = Math.max(last.to, first.to + length);
    merged.shift();
  }
}

/** Places of pockets, with those on the other side of holes that lie in one. */
function withBothSides(
  sites: readonly Site[],
  holes: readonly SaddleHole[],
  members: readonly MemberGeometry[],
  distance: number,
): Place[] {
  const places: Place[] = sites.map(({ member, station }) => ({ member, station }));
  const covered = (member: number, station: number): boolean => {
    const geometry = members[member];
    if (geometry === undefined) return false;
    const { length } = geometry.centreline;
    return places.some((place) => {
      const apart = Math.abs(place.station - station);
      const nearest = geometry.closed ? Math.min(apart, Math.abs(length - apart)) : apart;
      return place.member === member && nearest <= distance;
    });
  };
  for (let added = true; added;) {
    added = false;
    for (const { branch, station, main, at } of holes) {
      const [above, below] = [covered(branch, station), covered(main, at)];
      if (above === below) continue;
      places.push(above ? { member: main, station: at } : { member: branch, station });
      added = true;
    }
  }
  return places;
}

/**
 * What gas can pass at the dams of a pocket: a dam does where its tube has an opening on the far side that hoses can come
 * in by; the others are walls.
 *
 * @param solid openings of the whole frame that no weld closes
 * @param bore of the vent beside a dam [mm]
 */
export function damOpenings(
  pocket: Bore,
  work: {
    readonly members: readonly MemberGeometry[];
    readonly solid: readonly Opening[];
    readonly bore: number;
    readonly heightAt: (member: number, station: number) => number;
  },
): Opening[] {
  const { members, solid, bore, heightAt } = work;
  const member = members[pocket.member];
  if (member === undefined) return [];
  const own = solid.filter((opening) => opening.member === pocket.member);
  const opening = (station: number, beyond: readonly Opening[]): Opening[] => {
    if (beyond.length === 0) return [];
    const at = onMember(member, station);
    const height = heightAt(pocket.member, at);
    return [{ kind: 'dam', member: pocket.member, station: at, bore, name: '', height, beyond }];
  };
  const outside = own.filter(({ station }) => alongBore(pocket, member, station) === undefined);
  const before = member.closed ? outside : outside.filter(({ station }) => station < pocket.from);
  const after = member.closed ? outside : outside.filter(({ station }) => station > pocket.to);
  return [
    ...(pocket.dams.from ? opening(pocket.from, before) : []),
    ...(pocket.dams.to ? opening(pocket.to, after) : []),
  ];
}

/** A station that may lie beyond the seam of a closed member, on it. */
export function onMember({ closed, centreline }: MemberGeometry, station: number): number {
  return closed && station > centreline.length ? station - centreline.length : station;
}

/** Stations of the dams that bound a pocket, on its member. */
export const damStations = ({ from, to, dams }: Bore, member: MemberGeometry): number[] => [
  ...(dams.from ? [onMember(member, from)] : []),
  ...(dams.to ? [onMember(member, to)] : []),
];
