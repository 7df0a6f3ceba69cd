import { Type } from 'typebox';
import type { JobRepository } from '../../db/job-repository.ts';
import { Revision } from '../job/saved-job.ts';
import type { App } from './app-type.ts';
import { RequestError, unknownJob } from './request-error.ts';
import { JobParams, RevisionParams, SavedJobAnswer, refusals } from './schemas.ts';

export function revisionRoutes(app: App, { jobs }: { readonly jobs: JobRepository }): void {
  const tags = ['revisions'];

  app.get(
    '/api/jobs/:id/revisions',
    {
      schema: {
        tags,
        summary: 'Every save of a job, the last one first',
        params: JobParams,
        response: { 200: Type.Array(Revision), ...refusals(400, 404) },
      },
    },
    async (request) => {
      const revisions = await jobs.revisions(request.params.id);
      if (revisions === null) throw unknownJob(request.params.id);
      return revisions;
    },
  );

  app.get(
    '/api/jobs/:id/revisions/:revision',
    {
      schema: {
        tags,
        summary: 'A job as one save left it',
        params: RevisionParams,
        response: { 200: SavedJobAnswer, ...refusals(400, 404) },
      },
    },
    async (request) => {
      const { id, revision } = request.params;
      const saved = await jobs.revision(id, Number(revision));
      if (saved === null)
        throw new RequestError(404, 'revision-unknown', `There is no revision ${revision} of a job ${id}.`);
      return saved;
    },
  );
}
