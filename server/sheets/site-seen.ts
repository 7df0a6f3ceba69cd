import type { Job } from '../job/job.ts';
import { words } from '../language/words.ts';
import type { SiteView } from '../plan/site-view.ts';
import { sidesOf } from './site-words.ts';

/** From where a view of the site is seen, and which way round: 'From starboard: ahead is right'. */
export function seenFrom({ key }: SiteView, job: Job): string {
  const { ahead, back, port, starboard } = sidesOf(job);
  switch (key) {
    case 'from-starboard':
      return words('sheet.seen-from-starboard', { ahead, starboard });
    case 'from-back':
      return words('sheet.seen-from-back', { back, port });
    case 'from-above':
      return words('sheet.seen-from-above', { ahead });
    case 'pictorial':
      return words('sheet.seen-pictorial');
  }
}
