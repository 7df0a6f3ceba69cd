import { sql, type Selectable } from 'kysely';
import type { Job } from '../server/job/job.ts';
import type { LogEntry } from '../server/job/rates.ts';
import type { JobSummary, Revision, SavedJob } from '../server/job/saved-job.ts';
import type { Database } from './database.ts';
import { columnsOf, jobSummary, savedJob, searchText } from './stored-job.ts';
import type { JobsTable } from './tables/tables.ts';

/** Why a job could not be had: it never was, or it has been deleted and can be restored. */
export type Absent = { readonly kind: 'unknown' } | { readonly kind: 'deleted' };

export type Found = { readonly kind: 'found'; readonly saved: SavedJob };

export type SaveOutcome =
  | { readonly kind: 'saved'; readonly saved: SavedJob }
  /** Another save came first. Nothing has been written. */
  | { readonly kind: 'stale'; readonly theirs: SavedJob; readonly base: SavedJob | null }
  | Absent;

/** Every job and every save of it. Times (ISO 8601) and ids come from outside. */
export type JobRepository = ReturnType<typeof jobRepository>;

export function jobRepository(database: Database) {
  const jobRow = (id: string, within: Database = database) =>
    within.selectFrom('jobs').selectAll().where('id', '=', id).executeTakeFirst();

  async function revision(id: string, number: number, within: Database = database): Promise<SavedJob | null> {
    const row = await within
      .selectFrom('revisions')
      .selectAll()
      .where('job_id', '=', id)
      .where('number', '=', number)
      .executeTakeFirst();
    return row === undefined ? null : savedJob(row);
  }

  async function latest(row: Selectable<JobsTable>, within: Database = database): Promise<SavedJob> {
    const saved = await revision(row.id, row.revision, within);
    if (saved === null) throw new Error(`Job ${row.id} has lost its revision ${String(row.revision)}`);
    return saved;
  }

  async function write(within: Database, saved: SavedJob): Promise<void> {
    const { id, revision: number, savedAt, job } = saved;
    const document = JSON.stringify(job);
    await within
      .insertInto('revisions')
      .values({ job_id: id, number, saved_at: savedAt, title: job.title, document })
      .execute();
  }

  return {
    /** Jobs that have not been deleted, last saved first; with a search, those whose texts hold every word of it. */
    async list(search: string): Promise<JobSummary[]> {
      let query = database.selectFrom('jobs').selectAll().where('deleted_at', 'is', null);
      for (const word of searchText(search).split(/\s+/u).filter(Boolean))
        query = query.where((where) => where(where.fn<number>('instr', ['search_text', where.val(word)]), '>', 0));
      const rows = await query.orderBy('saved_at', 'desc').orderBy('id').execute();
      return rows.map(jobSummary);
    },

    /** How many jobs there are, deleted ones among them. */
    async count(): Promise<number> {
      const row = await database
        .selectFrom('jobs')
        .select(({ fn }) => fn.countAll<number>().as('jobs'))
        .executeTakeFirstOrThrow();
      return row.jobs;
    },

    async create(id: string, job: Job, now: string): Promise<SavedJob> {
      const saved: SavedJob = { id, revision: 1, savedAt: now, job };
      await database.transaction().execute(async (transaction) => {
        await transaction
          .insertInto('jobs')
          .values({ id, created_at: now, deleted_at: null, revision: 1, saved_at: now, ...columnsOf(job) })
          .execute();
        await write(transaction, saved);
      });
      return saved;
    },

    async find(id: string): Promise<Found | Absent> {
      const row = await jobRow(id);
      if (row === undefined) return { kind: 'unknown' };
      return row.deleted_at === null ? { kind: 'found', saved: await latest(row) } : { kind: 'deleted' };
    },

    /**
     * Saves a job as its next revision, if `basedOn` is still the latest one. The same document sent again (an
     * answer got lost on the way) is answered with the revision that it already is.
     */
    async save(id: string, job: Job, basedOn: number, now: string): Promise<SaveOutcome> {
      return database.transaction().execute(async (transaction): Promise<SaveOutcome> => {
        const row = await jobRow(id, transaction);
        if (row === undefined) return { kind: 'unknown' };
        if (row.deleted_at !== null) return { kind: 'deleted' };
        if (row.revision !== basedOn) {
          const theirs = await latest(row, transaction);
          if (JSON.stringify(theirs.job) === JSON.stringify(job)) return { kind: 'saved', saved: theirs };
          return { kind: 'stale', theirs, base: await revision(id, basedOn, transaction) };
        }
        const saved: SavedJob = { id, revision: basedOn + 1, savedAt: now, job };
        await write(transaction, saved);
        await transaction
          .updateTable('jobs')
          .set({ revision: saved.revision, saved_at: now, ...columnsOf(job) })
          .where('id', '=', id)
          .execute();
        return { kind: 'saved', saved };
      });
    },

    /** Takes a job out of the list; its revisions stay. False where there is no such job. */
    async remove(id: string, now: string): Promise<boolean> {
      const row = await jobRow(id);
      if (row === undefined) return false;
      await database
        .updateTable('jobs')
        .set({ deleted_at: now })
        .where('id', '=', id)
        .where('deleted_at', 'is', null)
        .execute();
      return true;
    },

    /** Puts a deleted job back into the list; one that was never deleted stays as it is. */
    async restore(id: string): Promise<SavedJob | null> {
      await database.updateTable('jobs').set({ deleted_at: null }).where('id', '=', id).execute();
      const row = await jobRow(id);
      return row === undefined ? null : latest(row);
    },

    /** Every save of a job, the last one first; also of a deleted job. Null where there is no such job. */
    async revisions(id: string): Promise<Revision[] | null> {
      const rows = await database
        .selectFrom('revisions')
        .select(['number', 'saved_at', 'title'])
        .where('job_id', '=', id)
        .orderBy('number', 'desc')
        .execute();
      if (rows.length === 0) return null;
      return rows.map(({ number, saved_at: savedAt, title }) => ({ revision: number, savedAt, title }));
    },

    /**
     * The times that were taken, of every job that stands in the list and is not made up: job by job as they were created.
     * Only they are read out of the documents; documents from before times were taken have none.
     */
    async times(): Promise<LogEntry[]> {
      const log = sql.raw("json_extract(revisions.document, '$.log')");
      const { rows } = await sql<{ log: string }>`
        select ${log} as log
        from jobs join revisions on revisions.job_id = jobs.id and revisions.number = jobs.revision
        where jobs.deleted_at is null and jobs.invented = 0 and json_array_length(revisions.document, '$.log') > 0
        order by jobs.created_at, jobs.id`.execute(database);
      return rows.flatMap((row) => JSON.parse(row.log) as LogEntry[]);
    },

    revision: (id: string, number: number): Promise<SavedJob | null> => revision(id, number),
  };
}
