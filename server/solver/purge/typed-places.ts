import type { GasPlace, Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { NEAR, type Opening } from './bores.ts';
import { endKey, type Openings } from './openings.ts';

type Way = 'feed' | 'vent';

/** Where gas goes in and comes out, as typed and possible; null: the plan's own choice. */
export type TypedPlaces = Readonly<Record<Way, Opening | null>>;

/**
 * Holds the typed feed and vent against the frame. One that is not possible is left to the plan's own choice; so is a
 * vent at the place of the feed.
 */
export function typedPlaces(
  { feed, vent, holes }: Pick<Purge, Way | 'holes'>,
  members: readonly MemberGeometry[],
  openings: Openings,
): { places: TypedPlaces; findings: Finding[] } {
  const findings: Finding[] = [];
  const held = (which: Way, typed: GasPlace | null): Opening | null => {
    if (typed === null) return null;
    const found = 'hole' in typed ? openings.holes.get(typed.hole) : openings.ends.get(endKey(typed.member, typed.end));
    if (found !== undefined) return found;
    // of a hole that has no place on the frame that is said already
    if ('hole' in typed && typed.hole <= holes.toAir.length) return null;
    findings.push(notThere(which, typed, members, openings));
    return null;
  };
  const places = { feed: held('feed', feed), vent: held('vent', vent) };
  if (places.feed === null || places.vent === null) return { places, findings };
  const same = places.feed.member === places.vent.member && Math.abs(places.feed.station - places.vent.station) <= NEAR;
  if (!same) return { places, findings };
  const member = members[places.feed.member]?.name ?? '';
  findings.push(finding('feed-is-vent', 'stop', '/purge/vent', { member }, { field: '/purge/vent', value: null }));
  return { places: { feed: places.feed, vent: null }, findings };
}

/** What is wrong with a place that gas was typed to pass at. */
function notThere(which: Way, typed: GasPlace, members: readonly MemberGeometry[], { ends }: Openings): Finding {
  const field = `/purge/${which}`;
  const left = { field, value: null };
  if ('hole' in typed) return finding('hole-no-such', 'stop', `${field}/hole`, { hole: typed.hole }, left);
  const member = members.find(({ name }) => name === typed.member);
  if (member === undefined || member.closed) {
    const open = members.find(({ name }) => ends.has(endKey(name, typed.end)));
    const wayOut = open === undefined ? left : { field: `${field}/member`, value: open.name };
    return finding('feed-not-an-end', 'stop', `${field}/member`, { member: typed.member }, wayOut);
  }
  const other = typed.end === 'start' ? 'finish' : 'start';
  const wayOut = ends.has(endKey(member.name, other)) ? { field: `${field}/end`, value: other } : left;
  return finding('feed-not-free', 'stop', `${field}/end`, { member: typed.member, end: typed.end }, wayOut);
}
