import type { EndOfMember, Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';

type End = 'start' | 'finish';

/** Where gas goes in and comes out, as typed and possible; null: the plan's own choice. */
export type GasEnds = Readonly<Record<'feed' | 'vent', { readonly member: string; readonly end: End } | null>>;

const otherEnd = (end: End): End => (end === 'start' ? 'finish' : 'start');

/** A typed end, if it is one and is open; else what is wrong with it. */
function lookAt(
  which: 'feed' | 'vent',
  typed: EndOfMember,
  members: readonly MemberGeometry[],
): Finding | { readonly member: string; readonly end: End } {
  const member = members.find(({ name }) => name === typed.member);
  if (member === undefined || member.closed) {
    const open = members.find(({ closed }) => !closed);
    const wayOut = open === undefined ? null : { field: `/purge/${which}/member`, value: open.name };
    return finding('feed-not-an-end', 'stop', `/purge/${which}/member`, { member: typed.member }, wayOut);
  }
  if (member[typed.end].kind !== 'free') {
    const other = otherEnd(typed.end);
    const wayOut = member[other].kind === 'free' ? { field: `/purge/${which}/end`, value: other } : null;
    return finding('feed-not-free', 'stop', `/purge/${which}/end`, { member: typed.member, end: typed.end }, wayOut);
  }
  return { member: typed.member, end: typed.end };
}

/** Holds the typed feed and vent against the frame. One that is not possible is left to the plan's own choice. */
export function typedGasEnds(
  { feed, vent }: Pick<Purge, 'feed' | 'vent'>,
  members: readonly MemberGeometry[],
): { ends: GasEnds; findings: Finding[] } {
  const findings: Finding[] = [];
  const held = (which: 'feed' | 'vent', typed: EndOfMember | null) => {
    if (typed === null) return null;
    const looked = lookAt(which, typed, members);
    if (!('code' in looked)) return looked;
    findings.push(looked);
    return null;
  };
  const ends = { feed: held('feed', feed), vent: held('vent', vent) };
  if (ends.feed === null || ends.feed.member !== ends.vent?.member || ends.feed.end !== ends.vent.end)
    return { ends, findings };
  findings.push(
    finding('feed-is-vent', 'stop', '/purge/vent', { member: ends.feed.member }, { field: '/purge/vent', value: null }),
  );
  return { ends: { ...ends, vent: null }, findings };
}

/**
 * The end of an open member that is fed; the other one is vented. As typed; else an open end, the start before the
 * finish. Which end is low is for the person who lays the frame on the bench.
 */
export function fedEnd(member: MemberGeometry, { feed, vent }: GasEnds): End {
  if (feed?.member === member.name) return feed.end;
  if (vent?.member === member.name) return otherEnd(vent.end);
  return member.start.kind !== 'free' && member.finish.kind === 'free' ? 'finish' : 'start';
}
