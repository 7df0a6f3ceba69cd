import type { AirHole, Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { spotAt } from '../frame/tube-place-spot.ts';
import { isDieBend, placeAt } from '../geometry/centreline.ts';
import { dot, type Vector3 } from '../geometry/vector.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import type { Opening } from './bores.ts';

/** What openings are found on: the frame, its welds, the direction that points up, the bore of its tube and that of a vent [mm]. */
type Looked = {
  readonly purge: Purge;
  readonly frame: FrameGeometry;
  readonly welds: readonly WeldWork[];
  readonly up: Vector3;
  readonly bore: number;
  readonly ventBore: number;
};

/** Openings between the bores of a frame and the air, and the open end or vent hole that each is for the job. */
export type Openings = {
  readonly all: readonly Opening[];
  readonly ends: ReadonlyMap<string, Opening>;
  readonly holes: ReadonlyMap<number, Opening>;
  readonly findings: readonly Finding[];
};

/** Welds whose gap is open while others are welded: joints between bars are closed before there is a frame. */
const GAPS: readonly WeldWork['site']['kind'][] = ['splice', 'let-in', 'closing'];

/** Key of a member's end in `Openings.ends`. */
export const endKey = (member: string, end: 'start' | 'finish'): string => `${end} ${member}`;

/** Height of a place on a member [mm]. */
export function heightAt({ centreline }: MemberGeometry, station: number, up: Vector3): number {
  const place = placeAt(centreline, station);
  return place === undefined ? 0 : dot(place.point, up);
}

/**
 * Where gas can pass between the bores and the air, in the order in which they are chosen where nothing else tells them
 * apart: open ends and plates with a hole in them, vent holes, and last the gaps of joints, which are open until their
 * welds close them. A plate without a hole closes its end.
 */
export function openingsOf(looked: Looked): Openings {
  const { purge, frame, welds, up, bore, ventBore: vent } = looked;
  const ends = new Map<string, Opening>();
  const holes = new Map<number, Opening>();
  const findings: Finding[] = [];
  const opening = (kind: Opening['kind'], member: number, station: number, width: number, name = ''): Opening => {
    const geometry = frame.members[member];
    const height = geometry === undefined ? 0 : heightAt(geometry, station, up);
    return { kind, member, station, bore: width, name, height, beyond: [] };
  };
  for (const [index, member] of frame.members.entries()) {
    if (member.closed) continue;
    for (const end of ['start', 'finish'] as const) {
      if (member[end].kind !== 'free') continue;
      const plate = welds.find(({ site }) => site.plate !== null && site.member === member.name && site.end === end);
      const hole = plate?.site.plate?.hole;
      if (hole === 0) continue;
      const station = end === 'start' ? 0 : member.centreline.length;
      const made =
        hole === undefined
          ? opening('end', index, station, vent)
          : opening('plate', index, station, Math.min(hole, bore));
      ends.set(endKey(member.name, end), made);
    }
  }
  for (const [index, hole] of purge.holes.toAir.entries()) {
    const spot = spotAt(hole.at, frame);
    const member = frame.members.findIndex(({ name }) => name === spot?.member);
    if (spot === undefined || member < 0) findings.push(noPlace(hole, index, frame));
    else holes.set(index + 1, opening('hole', member, spot.station, Math.min(hole.bore, bore), String(index + 1)));
  }
  const gaps = welds.flatMap(({ site }): Opening[] => {
    if (!GAPS.includes(site.kind)) return [];
    const member = frame.members.findIndex(({ name }) => name === site.member);
    return member < 0 ? [] : [opening('gap', member, site.station, vent, site.name)];
  });
  return { all: [...ends.values(), ...holes.values(), ...gaps], ends, holes, findings };
}

/** A vent hole that the frame has no place for; the way out is the only member, the first bend, or the end of the tube. */
function noPlace({ at }: AirHole, index: number, { members }: FrameGeometry): Finding {
  const field = `/purge/holes/toAir/${String(index)}/at`;
  const member = members.find(({ name }) => name === at.member);
  const [only] = members;
  const wayOut = (): Finding['wayOut'] => {
    if (member === undefined)
      return only !== undefined && members.length === 1 ? { field: `${field}/member`, value: only.name } : null;
    if (at.spot === 'along') return { field: `${field}/distance`, value: Math.floor(member.centreline.length) };
    if (at.spot === 'middle' || member.centreline.pieces.some((piece) => isDieBend(piece)))
      return { field: `${field}/number`, value: 1 };
    return { field: `${field}/spot`, value: 'middle' };
  };
  return finding('hole-no-place', 'stop', field, { hole: index + 1, member: at.member }, wayOut());
}
