import { Type } from 'typebox';
import type { JobRepository } from '../../db/job-repository.ts';
import { JobSummary } from '../job/saved-job.ts';
import type { App } from './app-type.ts';
import { readJob } from './read-job.ts';
import { RequestError, deletedJob, unknownJob } from './request-error.ts';
import { JobDocument, JobParams, SavedJobAnswer, StaleSaveAnswer, refusals } from './schemas.ts';

export type JobsService = {
  readonly jobs: JobRepository;
  /** ISO 8601. */
  readonly now: () => string;
  readonly newId: () => string;
};

const LONGEST_TITLE = 120;
const COPY = ' (copy)';

/** The revision that a save was based on: in the body, or as If-Match: "3". */
function revisionBefore(body: number | undefined, ifMatch: string | undefined): number {
  const given = body ?? Number(/^(?:W\/)?"?(\d{1,9})"?$/.exec(ifMatch ?? '')?.[1] ?? Number.NaN);
  if (Number.isInteger(given)) return given;
  throw new RequestError(
    428,
    'based-on-missing',
    'The save does not say which revision it is based on. Give basedOn in the body, or If-Match with the revision.',
  );
}

export function jobsRoutes(app: App, { jobs, now, newId }: JobsService): void {
  const tags = ['jobs'];

  app.get(
    '/api/jobs',
    {
      schema: {
        tags,
        summary: 'Jobs that have not been deleted, last saved first',
        querystring: Type.Object({ q: Type.Optional(Type.String({ maxLength: 200, title: 'search' })) }),
        response: { 200: Type.Array(JobSummary), ...refusals(400) },
      },
    },
    (request) => jobs.list(request.query.q ?? ''),
  );

  app.post(
    '/api/jobs',
    {
      schema: {
        tags,
        summary: 'Store a new job as its revision 1',
        body: Type.Object({ job: JobDocument }),
        response: { 201: SavedJobAnswer, ...refusals(400, 413, 415, 422) },
      },
    },
    async (request, reply) => reply.code(201).send(await jobs.create(newId(), readJob(request.body.job), now())),
  );

  app.get(
    '/api/jobs/:id',
    {
      schema: {
        tags,
        summary: 'The latest revision of a job; its number is the ETag',
        params: JobParams,
        response: { 200: SavedJobAnswer, ...refusals(400, 404, 410) },
      },
    },
    async (request, reply) => {
      const saved = await openJob(jobs, request.params.id);
      return reply.header('etag', `"${String(saved.revision)}"`).send(saved);
    },
  );

  app.put(
    '/api/jobs/:id',
    {
      schema: {
        tags,
        summary: 'Save a job as its next revision, unless another save came first',
        params: JobParams,
        body: Type.Object({
          job: JobDocument,
          basedOn: Type.Optional(Type.Integer({ minimum: 1, maximum: 999_999_999, title: 'based on revision' })),
        }),
        response: { 200: SavedJobAnswer, 409: StaleSaveAnswer, ...refusals(400, 404, 410, 413, 415, 422, 428) },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const job = readJob(request.body.job);
      const basedOn = revisionBefore(request.body.basedOn, request.headers['if-match']);
      const outcome = await jobs.save(id, job, basedOn, now());
      if (outcome.kind === 'unknown') throw unknownJob(id);
      if (outcome.kind === 'deleted') throw deletedJob(id);
      if (outcome.kind === 'saved')
        return reply.header('etag', `"${String(outcome.saved.revision)}"`).send(outcome.saved);
      const { theirs, base } = outcome;
      throw new RequestError(
        409,
        'stale-save',
        `Revision ${String(theirs.revision)} was saved meanwhile. Nothing is lost: merge it with yours and save again.`,
        { more: { yours: job, theirs, base } },
      );
    },
  );

  app.delete(
    '/api/jobs/:id',
    {
      schema: {
        tags,
        summary: 'Take a job out of the list; it can be restored with all its revisions',
        params: JobParams,
        response: { 204: Type.Null(), ...refusals(400, 404) },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      if (!(await jobs.remove(id, now()))) throw unknownJob(id);
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/api/jobs/:id/restore',
    {
      schema: {
        tags,
        summary: 'Put a deleted job back into the list',
        params: JobParams,
        response: { 200: SavedJobAnswer, ...refusals(400, 404) },
      },
    },
    async (request) => {
      const saved = await jobs.restore(request.params.id);
      if (saved === null) throw unknownJob(request.params.id);
      return saved;
    },
  );

  app.post(
    '/api/jobs/:id/duplicate',
    {
      schema: {
        tags,
        summary: 'A new job with the same content',
        params: JobParams,
        response: { 201: SavedJobAnswer, ...refusals(400, 404, 410) },
      },
    },
    async (request, reply) => {
      const { job } = await openJob(jobs, request.params.id);
      const title = [...job.title].slice(0, LONGEST_TITLE - COPY.length).join('') + COPY;
      return reply.code(201).send(await jobs.create(newId(), { ...job, title }, now()));
    },
  );
}

/** The latest revision of a job that stands in the list. */
export async function openJob(jobs: JobRepository, id: string) {
  const found = await jobs.find(id);
  if (found.kind === 'unknown') throw unknownJob(id);
  if (found.kind === 'deleted') throw deletedJob(id);
  return found.saved;
}
