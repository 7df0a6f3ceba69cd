import type { MemberBending } from '../../server/job/bending.ts';
import type { Job } from '../../server/job/job.ts';
import type { MakingKey } from '../../server/plan/making.ts';

/** How the job wants a member bent; a member that it says nothing of is bent the usual way. */
export const memberBending = (job: Job, member: string): MemberBending =>
  job.bending.members.find((one) => one.member === member) ?? {
    member,
    from: 'start',
    side: 'usual',
    closingStraight: null,
  };

/** The job's list with one member's way changed. */
export const withMemberBending = (
  job: Job,
  member: string,
  change: Partial<Omit<MemberBending, 'member'>>,
): MemberBending[] => [
  ...job.bending.members.filter((one) => one.member !== member),
  { ...memberBending(job, member), ...change },
];

/** What taking one of the plan's ways means for a member; two pieces are no way of one member. */
export function takenWay(job: Job, member: string, way: MakingKey): MemberBending[] {
  const now = memberBending(job, member);
  const otherEnd = way === 'other-end' || way === 'other-end-other-side';
  const otherSide = way === 'other-side' || way === 'other-end-other-side';
  return withMemberBending(job, member, {
    ...(otherEnd ? { from: now.from === 'start' ? 'finish' : 'start' } : {}),
    ...(otherSide ? { side: now.side === 'usual' ? 'other' : 'usual' } : {}),
  });
}
