import { Type } from 'typebox';
import type { JobRepository } from '../../db/job-repository.ts';
import type { StepMaker } from '../exports/step-maker.ts';
import { EXPORT_NAMES } from '../exports/write-export.ts';
import type { App } from './app-type.ts';
import { fileOf } from './export-answer.ts';
import { openJob } from './jobs-routes.ts';
import { readJob } from './read-job.ts';
import { JobDocument, JobParams, refusals } from './schemas.ts';

const Name = Type.Enum<[...typeof EXPORT_NAMES]>([...EXPORT_NAMES], { title: 'export' });
const Chosen = Type.Object({ member: Type.Optional(Type.String({ minLength: 1, maxLength: 40, title: 'member' })) });

const bytes = { schema: Type.Unsafe<Uint8Array>({ type: 'string', format: 'binary' }) };
const File = {
  description: 'The file',
  content: { 'text/csv': bytes, 'image/svg+xml': bytes, 'image/vnd.dxf': bytes, 'model/step': bytes },
};

type ExportService = { readonly jobs: JobRepository; readonly maker: StepMaker };

export function exportRoutes(app: App, { jobs, maker }: ExportService): void {
  const tags = ['exports'];
  app.addHook('preClose', (done) => {
    maker.stop();
    done();
  });

  app.get(
    '/api/jobs/:id/exports/:name',
    {
      schema: {
        tags,
        summary: 'A file of the latest revision of a job, for other programs',
        params: Type.Object({ ...JobParams.properties, name: Name }),
        querystring: Chosen,
        response: { 200: File, ...refusals(400, 404, 410, 422, 503) },
      },
    },
    async (request, reply) => {
      const { job } = await openJob(jobs, request.params.id);
      const wanted = { name: request.params.name, job, member: request.query.member ?? null };
      const { headers, file } = await fileOf(wanted, maker, request.log);
      return reply.headers(headers).send(file);
    },
  );

  app.post(
    '/api/exports/:name',
    {
      schema: {
        tags,
        summary: 'A file of a job that is not stored',
        params: Type.Object({ name: Name }),
        querystring: Chosen,
        body: JobDocument,
        response: { 200: File, ...refusals(400, 413, 415, 422, 503) },
      },
    },
    async (request, reply) => {
      const wanted = { name: request.params.name, job: readJob(request.body), member: request.query.member ?? null };
      const { headers, file } = await fileOf(wanted, maker, request.log);
      return reply.headers(headers).send(file);
    },
  );
}
