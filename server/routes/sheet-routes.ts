import type { JobRepository } from '../../db/job-repository.ts';
import { planInWords } from '../plan-in-words.ts';
import type { App } from './app-type.ts';
import { openJob } from './jobs-routes.ts';
import { pdfOf } from './sheet-answer.ts';
import { readJob } from './read-job.ts';
import { JobDocument, JobSheetParams, Pdf, SheetParams, refusals } from './schemas.ts';

export function sheetRoutes(app: App, { jobs }: { readonly jobs: JobRepository }): void {
  const tags = ['sheets'];

  app.get(
    '/api/jobs/:id/sheets/:name.pdf',
    {
      schema: {
        tags,
        summary: 'A sheet of the latest revision of a job',
        params: JobSheetParams,
        response: { 200: Pdf, ...refusals(400, 404, 410, 422) },
      },
    },
    async (request, reply) => {
      const { job, revision: number, savedAt: date } = await openJob(jobs, request.params.id);
      const revision = { number, date };
      const { headers, bytes } = await pdfOf(request.params.name, { plan: planInWords(job), job, revision });
      return reply.headers(headers).send(bytes);
    },
  );

  app.post(
    '/api/sheets/:name.pdf',
    {
      schema: {
        tags,
        summary: 'A sheet of a job that is not stored',
        params: SheetParams,
        body: JobDocument,
        response: { 200: Pdf, ...refusals(400, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const job = readJob(request.body);
      const { headers, bytes } = await pdfOf(request.params.name, { plan: planInWords(job), job, revision: null });
      return reply.headers(headers).send(bytes);
    },
  );
}
