import type { Job } from '../../job/job.ts';
import type { Way } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Figure } from '../../plan/figure.ts';
import { figure, input } from '../figure.ts';
import { finding } from '../finding.ts';

/** Hours worked in a day: common practice, no source. */
export const HOURS_A_DAY = 8;

/** What tells that a way goes to the bender: tube is bent or rolled for it. */
type Bent = Pick<Way, 'key' | 'rebends' | 'joints'>;

/** Whether a way needs a bender: a new frame, bends turned again, or a let-in piece that is bent or rolled. */
const needsBender = ({ key, rebends, joints }: Bent): boolean =>
  key === 'new-frame' || rebends.length > 0 || joints.some(({ letIn }) => letIn !== null && letIn.radius !== null);

/** Who bends, and how long a bender outside takes for it. */
export type Bender = { readonly bending: Job['quote']['bending']; readonly daysAtBender: number | null };

export const benderOf = ({ quote, closing }: Pick<Job, 'quote' | 'closing'>): Bender => ({
  bending: quote.bending,
  daysAtBender: closing.daysAtBender,
});

/**
 * Days until the frame is there again: those at a bender outside where one is needed, and the work in days of 8 hours. What
 * the shop bends itself is nowhere else: its minutes are in the work.
 *
 * @returns [d]; null where the minutes stand open, or a bender outside is needed and nobody knows how long he takes
 */
export function daysOut(
  way: Bent,
  { minutes, bending, daysAtBender }: Bender & { readonly minutes: Figure | null },
): Figure | null {
  const bent = needsBender(way);
  const away = bent && bending === 'outside' ? daysAtBender : 0;
  if (minutes === null || away === null) return null;
  return figure(
    away + minutes.value / 60 / HOURS_A_DAY,
    'd',
    'd = b + t / h',
    [
      input('b', bent ? `days-at-bender-${bending}` : 'days-at-bender-none', away, 'd'),
      input('t', 'minutes', minutes.value, 'min'),
      input('h', 'hours-a-day', HOURS_A_DAY, 'h'),
    ],
    ['practice'],
  );
}

/** That the days of some ways stand open, as nobody has said how long the bender takes. */
export function daysOpen(
  ways: readonly (Bent & Pick<Way, 'possible'>)[],
  { bending, daysAtBender }: Bender,
): Finding[] {
  const isUnknown = bending === 'outside' && daysAtBender === null;
  return isUnknown && ways.some((way) => way.possible && needsBender(way))
    ? [finding('days-at-bender-open', 'note', '/closing/daysAtBender')]
    : [];
}
