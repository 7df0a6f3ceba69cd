import type { Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { opensUnder } from '../frame/opens-under.ts';
import type { SaddleHole } from './bores.ts';

const ENDS = ['start', 'finish'] as const;

/** The holes under the saddle ends of a frame. A saddle end without one is a closed wall for both bores. */
export function saddleHoles(members: readonly MemberGeometry[], holes: Purge['holes']): SaddleHole[] {
  return members.flatMap((member, branch) =>
    ENDS.flatMap((end): SaddleHole[] => {
      const seat = member[end];
      if (seat.kind !== 'saddle' || !opensUnder(holes, member.name, end)) return [];
      const main = members.findIndex(({ name }) => name === seat.onto);
      const onto = members[main];
      if (onto === undefined) return [];
      const { length } = onto.centreline;
      const at = onto.closed ? seat.station : Math.min(length, Math.max(0, seat.station));
      return [{ branch, station: end === 'start' ? 0 : member.centreline.length, main, at }];
    }),
  );
}

/** Exceptions that speak of no saddle end; the way out is the member's other end where that is one and is not excepted yet. */
export function strayExceptions(members: readonly MemberGeometry[], { except }: Purge['holes']): Finding[] {
  return except.flatMap(({ member: name, end }, index) => {
    const member = members.find((one) => one.name === name);
    if (member !== undefined && member[end].kind === 'saddle') return [];
    const field = `/purge/holes/except/${String(index)}`;
    const other = end === 'start' ? 'finish' : 'start';
    const known = except.some((one) => one.member === name && one.end === other);
    const wayOut =
      member !== undefined && member[other].kind === 'saddle' && !known
        ? { field: `${field}/end`, value: other }
        : null;
    return [finding('except-not-a-saddle', 'caution', field, { member: name, end }, wayOut)];
  });
}
