import type { JobRepository } from '../../db/job-repository.ts';
import { words } from '../language/words.ts';
import { planInWords } from '../plan-in-words.ts';
import { renderSheet, type SheetName } from '../sheets/render-sheet.ts';
import type { SheetInput } from '../sheets/sheet-input.ts';
import type { App } from './app-type.ts';
import { openJob } from './jobs-routes.ts';
import { readJob } from './read-job.ts';
import { RequestError } from './request-error.ts';
import { JobDocument, JobSheetParams, Pdf, SheetParams, refusals } from './schemas.ts';

/** A PDF holds no script; the page may show it in a frame of its own. */
const PDF_HEADERS = {
  'content-type': 'application/pdf',
  'content-security-policy': "default-src 'none'; style-src 'unsafe-inline'; object-src 'self'; frame-ancestors 'self'",
};

/** A sheet with the headers of its answer, or the refusal that says why it cannot be made. */
async function pdfOf(name: SheetName, input: SheetInput) {
  const sheet = await renderSheet(name, input);
  if (!sheet.ok) throw new RequestError(422, 'sheet-not-possible', words(`sheet.reason.${sheet.reason}`));
  const headers = { ...PDF_HEADERS, 'content-disposition': `inline; filename="${name}.pdf"` };
  return { headers, bytes: Buffer.from(sheet.pdf) };
}

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
