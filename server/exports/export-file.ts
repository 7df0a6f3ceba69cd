import type { Job } from '../job/job.ts';
import type { MemberPlan } from '../plan/frame.ts';
import type { Plan } from '../plan/plan.ts';

/** What every export is made from; `member` chooses one member by name, null takes all. */
export type ExportInput = { readonly plan: Plan; readonly job: Job; readonly member: string | null };

/** Why there is nothing to hand out; `export.reason.<reason>` has the words. */
export type ExportReason =
  | 'frame-not-possible'
  | 'no-such-member'
  | 'no-bends'
  | 'no-such-view'
  | 'no-wraps'
  | 'no-welds'
  | 'no-legs'
  | 'no-level-rows'
  | 'no-quote'
  | 'nothing-to-saw'
  | 'no-bars'
  | 'solid-not-possible'
  | 'solid-busy'
  | 'solid-too-long';

export type Refused = {
  readonly ok: false;
  readonly reason: ExportReason;
  /** The member that it is about, or empty. */
  readonly member: string;
  /** What the geometry kernel said, for the log; empty elsewhere. */
  readonly cause: string;
};

export type Exported = { readonly ok: true; readonly text: string } | Refused;

export const exported = (text: string): Exported => ({ ok: true, text });

export const refused = (reason: ExportReason, member = '', cause = ''): Refused => ({
  ok: false,
  reason,
  member,
  cause,
});

export type Chosen = { readonly ok: true; readonly members: readonly MemberPlan[] } | Refused;

/** The members of the frame as wanted that an export is about. */
export function chosenMembers({ plan, member }: ExportInput): Chosen {
  if (plan.frame === null) return refused('frame-not-possible');
  const members = plan.frame.members.filter(({ name }) => member === null || name === member);
  return members.length === 0 ? refused('no-such-member', member ?? '') : { ok: true, members };
}
