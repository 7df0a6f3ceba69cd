import type { Selectable } from 'kysely';
import type { Job } from '../server/job/job.ts';
import type { JobSummary, SavedJob } from '../server/job/saved-job.ts';
import { parseJob } from '../server/job/validate.ts';
import type { JobsTable, RevisionsTable } from './tables/tables.ts';

/** The columns of a job that follow from its latest document. */
export const columnsOf = (job: Job) => ({
  title: job.title,
  customer: job.customer,
  drawing_number: job.drawingNumber,
  invented: job.invented ? 1 : 0,
  search_text: searchText([job.title, job.customer, job.drawingNumber, job.note].join('\n')),
});

/** Text as it is searched: letters of any script in lower case, composed the same way. */
export const searchText = (text: string): string => text.normalize('NFKC').toLowerCase();

/** A stored document; one of an older version is upgraded on the way out. */
export function savedJob(row: Selectable<RevisionsTable>): SavedJob {
  const parsed = parseJob(JSON.parse(row.document));
  if (!parsed.ok) {
    const [problem] = parsed.problems;
    throw new Error(`Job ${row.job_id}, revision ${String(row.number)} cannot be read: ${problem?.message ?? ''}`);
  }
  return { id: row.job_id, revision: row.number, savedAt: row.saved_at, job: parsed.job };
}

export const jobSummary = (row: Selectable<Omit<JobsTable, 'search_text' | 'deleted_at'>>): JobSummary => ({
  id: row.id,
  title: row.title,
  customer: row.customer,
  drawingNumber: row.drawing_number,
  invented: row.invented === 1,
  revision: row.revision,
  createdAt: row.created_at,
  savedAt: row.saved_at,
});
