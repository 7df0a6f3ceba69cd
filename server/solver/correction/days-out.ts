import type { Way } from '../../plan/correction.ts';
import type { Figure } from '../../plan/figure.ts';
import { figure, input } from '../figure.ts';

/** Hours worked in a day: common practice, no source. */
export const HOURS_A_DAY = 8;

/** What tells that a way goes to the bender: tube is bent or rolled for it. */
type Bent = Pick<Way, 'key' | 'rebends' | 'joints'>;

/** Whether a way needs a bender: a new frame, bends turned again, or a let-in piece that is bent or rolled. */
const needsBender = ({ key, rebends, joints }: Bent): boolean =>
  key === 'new-frame' || rebends.length > 0 || joints.some(({ letIn }) => letIn !== null && letIn.radius !== null);

/**
 * Days until the frame is there again: those at the bender where one is needed, and the work in days of 8 hours.
 *
 * @returns [d]; null where the minutes stand open, or a bender is needed and nobody knows how long that takes
 */
export function daysOut(
  way: Bent,
  { minutes, daysAtBender }: { readonly minutes: Figure | null; readonly daysAtBender: number | null },
): Figure | null {
  const away = needsBender(way) ? daysAtBender : 0;
  if (minutes === null || away === null) return null;
  return figure(
    away + minutes.value / 60 / HOURS_A_DAY,
    'd',
    'd = b + t / h',
    [
      input('b', 'days-at-bender', away, 'd'),
      input('t', 'minutes', minutes.value, 'min'),
      input('h', 'hours-a-day', HOURS_A_DAY, 'h'),
    ],
    ['practice'],
  );
}
