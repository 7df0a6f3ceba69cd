import type { Selectable } from 'kysely';
import { parseIssuedQuote, QUOTE_VERSION, type IssuedQuote } from '../server/job/issued-quote.ts';
import { JOB_VERSION, type Job } from '../server/job/job.ts';
import { parseJob } from '../server/job/validate.ts';
import type { QuotePlan } from '../server/plan/quote.ts';
import type { Database } from './database.ts';
import type { Absent } from './job-repository.ts';
import type { QuotesTable } from './tables/tables.ts';

/** What goes out: a save of a job with the quote that was made from it. */
export type QuoteToIssue = {
  readonly jobId: string;
  readonly jobRevision: number;
  readonly job: Job;
  readonly quote: QuotePlan;
};

export type IssueOutcome =
  | { readonly kind: 'issued'; readonly issued: IssuedQuote }
  /** The job has been saved since. Nothing has been written. */
  | { readonly kind: 'stale'; readonly revision: number }
  | Absent;

/** A quote as it went out, with the job that it was made from. */
export type StoredQuote = { readonly issued: IssuedQuote; readonly job: Job; readonly quote: QuotePlan };

/** Quotes that went out, by job. They are never changed, and stay where their job is deleted. */
export type QuoteRepository = ReturnType<typeof quoteRepository>;

export function quoteRepository(database: Database) {
  return {
    /** The next quote of a job. One that already went out from this save with the same amounts is that quote again. */
    async issue(asked: QuoteToIssue, now: string): Promise<IssueOutcome> {
      const { jobId, jobRevision } = asked;
      return database.transaction().execute(async (transaction): Promise<IssueOutcome> => {
        const job = await transaction.selectFrom('jobs').selectAll().where('id', '=', jobId).executeTakeFirst();
        if (job === undefined) return { kind: 'unknown' };
        if (job.deleted_at !== null) return { kind: 'deleted' };
        if (job.revision !== jobRevision) return { kind: 'stale', revision: job.revision };
        const last = await transaction
          .selectFrom('quotes')
          .selectAll()
          .where('job_id', '=', jobId)
          .orderBy('number', 'desc')
          .executeTakeFirst();
        const next = rowOf(asked, (last?.number ?? 0) + 1, now);
        if (last?.job_revision === jobRevision && last.quote === next.quote)
          return { kind: 'issued', issued: issuedQuote(last) };
        await transaction.insertInto('quotes').values(next).execute();
        return { kind: 'issued', issued: issuedQuote(next) };
      });
    },

    /** Every quote of a job, the last one first. */
    async list(jobId: string): Promise<IssuedQuote[]> {
      const rows = await database
        .selectFrom('quotes')
        .selectAll()
        .where('job_id', '=', jobId)
        .orderBy('number', 'desc')
        .execute();
      return rows.map(issuedQuote);
    },

    async find(jobId: string, number: number): Promise<StoredQuote | null> {
      const row = await database
        .selectFrom('quotes')
        .selectAll()
        .where('job_id', '=', jobId)
        .where('number', '=', number)
        .executeTakeFirst();
      return row === undefined ? null : storedQuote(row);
    },
  };
}

function rowOf({ jobId, jobRevision, job, quote }: QuoteToIssue, number: number, now: string): Selectable<QuotesTable> {
  const option = quote.options.find(({ scope }) => scope === quote.scope);
  return {
    job_id: jobId,
    number,
    job_revision: jobRevision,
    issued_at: now,
    version: JOB_VERSION,
    job: JSON.stringify(job),
    quote_version: QUOTE_VERSION,
    quote: JSON.stringify(quote),
    reference: job.quote.reference,
    date: quote.date,
    valid_until: quote.validUntil,
    scope: quote.scope,
    total: option?.total ?? 0,
    currency: quote.currency,
    minor_digits: quote.minorDigits,
    open: option?.open.length ?? 0,
    examples: option?.examples ?? 0,
  };
}

const issuedQuote = (row: Selectable<QuotesTable>): IssuedQuote => ({
  number: row.number,
  jobRevision: row.job_revision,
  issuedAt: row.issued_at,
  reference: row.reference,
  date: row.date,
  validUntil: row.valid_until,
  scope: row.scope as IssuedQuote['scope'],
  total: row.total,
  currency: row.currency,
  minorDigits: row.minor_digits,
  open: row.open,
  examples: row.examples,
});

/** The job is upgraded on the way out where it is older; its quote stays word for word, or is a fault. */
function storedQuote(row: Selectable<QuotesTable>): StoredQuote {
  const called = `Quote ${String(row.number)} of job ${row.job_id}`;
  const parsed = parseJob(JSON.parse(row.job));
  if (!parsed.ok) throw new Error(`${called} cannot be read: ${parsed.problems[0]?.message ?? ''}`);
  const read = parseIssuedQuote(JSON.parse(row.quote), row.quote_version);
  if (!read.ok) throw new Error(`${called} cannot be read: ${read.reason}`);
  return { issued: issuedQuote(row), job: parsed.job, quote: read.quote };
}
