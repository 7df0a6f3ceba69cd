import { Type } from 'typebox';
import type { JobRepository } from '../../db/job-repository.ts';
import type { QuoteRepository, StoredQuote } from '../../db/quote-repository.ts';
import type { StepMaker } from '../exports/step-maker.ts';
import { IssuedQuote } from '../job/issued-quote.ts';
import { planInWords } from '../plan-in-words.ts';
import type { App } from './app-type.ts';
import { fileOf } from './export-answer.ts';
import { openJob } from './jobs-routes.ts';
import { noQuote, staleQuote, unknownQuote } from './quote-refusals.ts';
import { deletedJob, unknownJob } from './request-error.ts';
import { JobParams, QuoteFile, QuoteFileParams, refusals } from './schemas.ts';
import { pdfOf } from './sheet-answer.ts';

export type QuoteService = {
  readonly jobs: JobRepository;
  readonly quotes: QuoteRepository;
  readonly maker: StepMaker;
  /** ISO 8601. */
  readonly now: () => string;
};

/** Quotes of a job as they went out. Like its revisions, they stay where the job is deleted. */
export function quoteRoutes(app: App, { jobs, quotes, maker, now }: QuoteService): void {
  const tags = ['quotes'];

  app.get(
    '/api/jobs/:id/quotes',
    {
      schema: {
        tags,
        summary: 'Every quote of a job that went out, the last one first',
        params: JobParams,
        response: { 200: Type.Array(IssuedQuote), ...refusals(400, 404) },
      },
    },
    async (request) => {
      const { id } = request.params;
      if ((await jobs.find(id)).kind === 'unknown') throw unknownJob(id);
      return quotes.list(id);
    },
  );

  app.post(
    '/api/jobs/:id/quotes',
    {
      schema: {
        tags,
        summary: 'Issue a quote from the latest revision of a job: its amounts stay as they are now',
        params: JobParams,
        body: Type.Object({
          basedOn: Type.Integer({ minimum: 1, maximum: 999_999_999, title: 'based on revision' }),
        }),
        response: { 201: IssuedQuote, ...refusals(400, 404, 409, 410, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const { revision, job } = await openJob(jobs, id);
      if (revision !== request.body.basedOn) throw staleQuote(revision);
      const { quote, findings } = planInWords(job);
      if (quote === null) throw noQuote(findings);
      const outcome = await quotes.issue({ jobId: id, jobRevision: revision, job, quote }, now());
      if (outcome.kind === 'unknown') throw unknownJob(id);
      if (outcome.kind === 'deleted') throw deletedJob(id);
      if (outcome.kind === 'stale') throw staleQuote(outcome.revision);
      return reply.code(201).send(outcome.issued);
    },
  );

  app.get(
    '/api/jobs/:id/quotes/:number/:file',
    {
      schema: {
        tags,
        summary: 'A quote that went out: for the customer, with its working for the shop, or as a table',
        params: QuoteFileParams,
        response: { 200: QuoteFile, ...refusals(400, 404, 422) },
      },
    },
    async (request, reply) => {
      const { id, number, file } = request.params;
      const stored = await quotes.find(id, Number(number));
      if (stored === null) throw unknownQuote(id, number);
      const plan = planOf(stored);
      if (file === 'quote.csv') {
        const wanted = { name: file, plan, job: stored.job, member: null, issued: stored.issued };
        const made = await fileOf(wanted, maker, request.log);
        return reply.headers(made.headers).send(made.file);
      }
      const { issued, job } = stored;
      const saved = await jobs.revision(id, issued.jobRevision);
      const revision = { number: issued.jobRevision, date: saved?.savedAt ?? issued.issuedAt };
      const sheet = file === 'quote.pdf' ? 'quote' : 'quote-working';
      const { headers, bytes } = await pdfOf(sheet, { plan, job, revision, issued });
      return reply.headers(headers).send(bytes);
    },
  );
}

/** Drawings and lengths are planned anew from the job as it was; rates and amounts are those that went out. */
const planOf = ({ job, quote }: StoredQuote) => ({ ...planInWords(job), quote });
