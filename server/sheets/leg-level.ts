import type { Job } from '../job/job.ts';
import { wallClockAfter, wallClockWords } from '../language/wall-clock.ts';
import { words } from '../language/words.ts';
import type { Finding } from '../plan/finding.ts';
import type { LegPlan } from '../plan/leg.ts';
import type { LevelPlan } from '../plan/site.ts';
import { listWords, trimWords } from './level-lies.ts';
import { paragraph, type Block } from './text-block.ts';

/** Less than this of a ± is nothing [mm]. */
const NOTHING = 0.0005;

/** What is to be said of the level on the sheet of a leg whose length depends on it. */
const LEVEL_CODES: readonly Finding['code'][] = [
  'level-not-read',
  'level-set-not-read',
  'level-sets-order',
  'level-drift',
  'level-no-time',
];

/** Whether a leg's length goes by how the structure lies: by its ±, or where nothing is read by what is asked of the frame. */
export const restsOnLevel = ({ doubts }: LegPlan, { site: { standing } }: Job): boolean =>
  doubts.some(({ from, plusMinus }) => from === 'level' && plusMinus.value > NOTHING) ||
  standing.slopes.some(({ to }) => to === 'level') ||
  standing.height?.to === 'level';

export const isLevelFinding = ({ code }: Finding): boolean => LEVEL_CODES.includes(code);

/** Which readings a length rests on, and until when they are believed; that there are none. */
export function levelBelow(level: LevelPlan, job: Job, width: number): Block {
  const { sides } = job.site;
  if (!level.known) return paragraph(words('sheet.leg-level-unread'), width, { height: 2.1, weight: 600 });
  const until = wallClockAfter(level.taken, level.goodFor);
  return paragraph(
    words('sheet.leg-level', {
      set: level.set,
      taken: level.taken === '' ? words('sheet.not-noted') : wallClockWords(level.taken),
      until: until === '' ? words('sheet.not-known') : wallClockWords(until),
      trimName: words(`sheet.trim.${sides}`),
      trim: trimWords(level, job),
      listName: words(`sheet.list.${sides}`),
      list: listWords(level, job),
    }),
    width,
    { height: 2.1 },
  );
}
