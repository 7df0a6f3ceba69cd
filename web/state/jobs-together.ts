import type { Job } from '../../server/job/job.ts';
import type { JobSummary, SavedJob } from '../../server/job/saved-job.ts';
import type { StockLayout } from '../../server/job/stock.ts';
import type { Taking } from '../../server/job/stock-row.ts';
import { words } from '../../server/language/words.ts';
import type { api } from '../api/client.ts';
import { areSameBars, barsOn, named, othersOn } from './bars-of-jobs.ts';
import { whyNot } from './stock-list.svelte.ts';

/** What is needed from outside to read and save jobs, so that it can be tried without a browser. */
export type JobsSource = Pick<typeof api, 'jobs' | 'open' | 'save'>;

/** Jobs whose bars are taken at once: all bars with every piece named, and each job by its name on them. */
export type Together = {
  readonly whole: StockLayout;
  readonly names: Taking['together'];
  /** The other jobs, as they were read. */
  readonly others: readonly SavedJob[];
};

/** So much of an id tells two jobs of one title apart, as the server writes it. */
const ID_PART = 8;

/** Whether a job may be the one that bars are named after: by its title, or by what of its id stands for it. */
const mayBeCalled = ({ id, title }: Pick<JobSummary, 'id' | 'title'>, name: string): boolean =>
  [title.trim(), id, id.slice(0, ID_PART)].includes(name) ||
  [id, id.slice(0, ID_PART)].some((mark) => name.endsWith(` (${mark})`));

type Known = { readonly id: string; readonly title: string; readonly layout: StockLayout };
type Read = Known & { readonly saved: SavedJob | null; name: string };

/** What the first job is called on the bars of another, where both speak of the same bars; undefined: they do not. */
function nameSeenBy(first: Known, other: Known, otherName: string): string | undefined {
  const shared = barsOn(first.layout.bars, otherName);
  return othersOn(other.layout)
    .filter((name) => mayBeCalled(first, name))
    .find((name) => areSameBars(named(shared, name), barsOn(named(other.layout.bars, otherName), name)));
}

/**
 * The jobs whose pieces lie on the bars of one, and those on theirs: each keeps its own bars, and these are all of them
 * once. Only the list of jobs and each of these is read.
 *
 * @returns in words why they cannot be had: a job that is gone, or keeps other bars
 */
export async function jobsTogether(
  own: Known,
  source: Pick<JobsSource, 'jobs' | 'open'>,
): Promise<{ readonly together: Together } | { readonly trouble: string }> {
  const listed = await source.jobs('');
  if (listed.kind !== 'done') return { trouble: whyNot(listed) };
  const found: Read[] = [{ ...own, saved: null, name: '' }];
  for (const by of found)
    for (const name of othersOn(by.layout)) {
      if (found.some((one) => one.name === name)) continue;
      const other = await jobCalled(name, by, listed.body, found, source);
      if (typeof other === 'string') return { trouble: other };
      found.push(other.job);
      // the first learns its name from those that it shares bars with
      if (by.name === '') by.name = other.byName;
    }
  const bars = found.flatMap(({ layout, name }, index) =>
    named(layout.bars, name).filter(
      ({ pieces }) => !pieces.some(({ job }) => found.slice(0, index).some((before) => before.name === job)),
    ),
  );
  return {
    together: {
      whole: { ...own.layout, bars, taken: null },
      names: found.map(({ id, name }) => ({ id, name })),
      others: found.flatMap(({ saved }) => (saved === null ? [] : [saved])),
    },
  };
}

/** The stored job of a name whose bars are those that another shares with it, or in words why there is none. */
async function jobCalled(
  name: string,
  by: Read,
  listed: readonly JobSummary[],
  found: readonly Read[],
  source: Pick<JobsSource, 'open'>,
): Promise<{ readonly job: Read; readonly byName: string } | string> {
  for (const { id, title } of listed) {
    if (found.some((one) => one.id === id) || !mayBeCalled({ id, title }, name)) continue;
    const answer = await source.open(id);
    if (answer.kind !== 'done') return whyNot(answer);
    const { layout } = answer.body.job.stock;
    if (layout === null) continue;
    const job: Read = { id, title, layout, saved: answer.body, name };
    const byName = nameSeenBy(by, job, name);
    if (byName !== undefined && (by.name === '' || by.name === byName)) return { job, byName };
  }
  return words('together.otherBars', { job: name });
}

/** Bars that a stored job is to keep; a number: they have been taken as that. */
export type ToKeep = { readonly id: string; readonly title: string; readonly layout: StockLayout };

const withLayout = (job: Job, layout: StockLayout | null): Job => ({ ...job, stock: { ...job.stock, layout } });

/** Reads stored jobs that are to keep other bars; in words which of them cannot: what it keeps has been taken. */
export async function readToKeep(
  jobs: readonly ToKeep[],
  source: Pick<JobsSource, 'open'>,
): Promise<{ readonly saved: SavedJob[]; readonly troubles: string[] }> {
  const saved: SavedJob[] = [];
  const troubles: string[] = [];
  for (const { id, title } of jobs) {
    const answer = await source.open(id);
    if (answer.kind !== 'done') troubles.push(words('together.notKept', { job: title, reason: whyNot(answer) }));
    else if ((answer.body.job.stock.layout?.taken ?? null) !== null)
      troubles.push(words('together.takenThere', { job: title }));
    else saved.push(answer.body);
  }
  return { saved, troubles };
}

/**
 * Saves jobs with other bars, each on top of what was read; in words which of them were not: somebody else's save is never
 * written over.
 *
 * @param layoutOf the bars that a job keeps from now on
 */
export async function keepIn(
  saved: readonly SavedJob[],
  layoutOf: (job: SavedJob) => StockLayout | null,
  source: Pick<JobsSource, 'save'>,
): Promise<string[]> {
  const troubles: string[] = [];
  for (const one of saved) {
    const title = one.job.title || words('jobs.untitled');
    const answer = await source.save(one.id, withLayout(one.job, layoutOf(one)), one.revision);
    if (answer.kind === 'conflict') troubles.push(words('together.savedMeanwhile', { job: title }));
    else if (answer.kind !== 'done') troubles.push(words('together.notKept', { job: title, reason: whyNot(answer) }));
  }
  return troubles;
}

/** The layout that a job keeps, as taken under a number; null: not taken. */
export const markedAs = ({ job }: SavedJob, taken: number | null): StockLayout | null =>
  job.stock.layout === null ? null : { ...job.stock.layout, taken };
