import type { Job } from '../../server/job/job.ts';
import type { EndOfMember, Purge } from '../../server/job/purge.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import { withChoice } from './typed-text.ts';

/** An end of a member that sits on another tube. */
export type SaddleEnd = EndOfMember & { readonly onto: string };

export const saddleEnds = (members: readonly MemberPlan[]): readonly SaddleEnd[] =>
  members.flatMap((member) =>
    (['start', 'finish'] as const).flatMap((end): SaddleEnd[] => {
      const { kind, onto } = member[end];
      return kind === 'saddle' ? [{ member: member.name, end, onto: onto ?? '' }] : [];
    }),
  );

const sameEnd = (one: EndOfMember, other: EndOfMember): boolean => one.member === other.member && one.end === other.end;

/** Whether a hole is drilled under a saddle end: as all are, unless it is the other way round there. */
export const isDrilled = ({ underSaddles, except }: Purge['holes'], end: EndOfMember): boolean =>
  (underSaddles === 'all') !== except.some((one) => sameEnd(one, end));

/** The job with a hole under a saddle end, or without one. */
export function withDrilled(job: Job, { member, end }: EndOfMember, drilled: boolean): Job {
  const { underSaddles, except } = job.purge.holes;
  const others = except.filter((one) => !sameEnd(one, { member, end }));
  const isUsual = drilled === (underSaddles === 'all');
  return withChoice(job, '/purge/holes/except', isUsual ? others : [...others, { member, end }]);
}

/** The job with holes under all saddle ends, or under none: what was said of single ends no longer holds. */
export const withHolesUnder = (job: Job, ends: Purge['holes']['underSaddles']): Job =>
  withChoice(withChoice(job, '/purge/holes/underSaddles', ends), '/purge/holes/except', []);

/** Exceptions that speak of no saddle end of the frame, with their places in the list, so that they can be taken out. */
export const strayExceptions = (
  { except }: Purge['holes'],
  ends: readonly SaddleEnd[],
): readonly { readonly end: EndOfMember; readonly index: number }[] =>
  except.flatMap((end, index) => (ends.some((one) => sameEnd(one, end)) ? [] : [{ end, index }]));
