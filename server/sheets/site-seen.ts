import type { Job } from '../job/job.ts';
import { words, wordsOf } from '../language/words.ts';
import type { SiteView } from '../plan/site-view.ts';
import { sideWords } from './site-words.ts';

/** From where a view of the site is seen, and which way round: 'Seen from starboard: ahead is on the right'. */
export function seenFrom({ key }: SiteView, job: Job): string {
  const from = wordsOf(`siteView.${job.site.sides}`, key);
  switch (key) {
    case 'from-starboard':
      return words('sheet.seen-right', { from, side: sideWords(job, 'ahead') });
    case 'from-back':
      return words('sheet.seen-left', { from, side: sideWords(job, 'port') });
    case 'from-above':
      return words('sheet.seen-top', { from, side: sideWords(job, 'ahead') });
    case 'pictorial':
      return words('sheet.seen', { from });
  }
}
