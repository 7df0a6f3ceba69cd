import type { Bending, MemberBending } from '../../job/bending.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Making, MakingKey, MemberMaking, Obstacle } from '../../plan/making.ts';
import { finding } from '../finding.ts';

/** The job's list of members bent another way, with one of them changed. */
export const withBending = (bending: Bending, changed: MemberBending): MemberBending[] => [
  ...bending.members.filter(({ member }) => member !== changed.member),
  changed,
];

const OTHER_END: readonly MakingKey[] = ['other-end', 'other-end-other-side'];
const OTHER_SIDE: readonly MakingKey[] = ['other-side', 'other-end-other-side'];

/** How a member is bent where one of the ways is taken instead of the planned one. */
function takenOtherwise(asked: MemberBending, key: MakingKey): MemberBending {
  return {
    ...asked,
    from: OTHER_END.includes(key) ? (asked.from === 'start' ? 'finish' : 'start') : asked.from,
    side: OTHER_SIDE.includes(key) ? (asked.side === 'usual' ? 'other' : 'usual') : asked.side,
  };
}

/**
 * What there is to say about getting a member through the machine: each thing that the tube strikes, and the way that
 * gets by, or that none does.
 */
export function makingFindings(
  member: string,
  { ways, split }: MemberMaking,
  asked: MemberBending,
  bending: Bending,
): Finding[] {
  const [planned, ...others] = ways;
  if (planned === undefined) return [];
  const findings = strikes(member, planned);
  if (planned.possible) return findings;
  const other = others.find(({ possible }) => possible);
  if (other !== undefined) {
    const value = withBending(bending, takenOtherwise(asked, other.key));
    const wayOut = { field: '/bending/members', value };
    return [...findings, finding('bend-another-way', 'caution', '/frame', { member, making: other.key }, wayOut)];
  }
  const data = {
    member,
    ...(split === null ? {} : { splitAt: split.station.value }),
  };
  return [...findings, finding('bend-no-way', 'caution', '/frame', data)];
}

/** One finding for each thing that is struck, at the bend where the tube would be furthest inside. */
function strikes(member: string, { problems }: Making): Finding[] {
  const worst = new Map<Obstacle, { value: number; bends: number[] }>();
  for (const { code, obstacle, bend, value } of problems) {
    if (code !== 'strikes' || obstacle === null) continue;
    const before = worst.get(obstacle);
    const bends = [...new Set([...(before?.bends ?? []), bend])];
    worst.set(obstacle, before === undefined || value < before.value ? { value, bends } : { ...before, bends });
  }
  return [...worst].map(([obstacle, { value, bends }]) =>
    finding('tube-strikes', obstacle === 'tube' ? 'stop' : 'caution', '/frame', {
      member,
      obstacle,
      bends: bends.join(', '),
      value,
      low: 0,
    }),
  );
}
