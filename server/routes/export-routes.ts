import { Type } from 'typebox';
import type { JobRepository } from '../../db/job-repository.ts';
import { attachment } from '../exports/file-name.ts';
import { EXPORT_NAMES, mediaType, writeExport, type ExportName } from '../exports/write-export.ts';
import type { ExportReason } from '../exports/export-file.ts';
import { stepMaker, type StepMaker } from '../exports/step-maker.ts';
import type { Job } from '../job/job.ts';
import { words } from '../language/words.ts';
import { planInWords } from '../plan-in-words.ts';
import type { App } from './app-type.ts';
import { openJob } from './jobs-routes.ts';
import { readJob } from './read-job.ts';
import { RequestError } from './request-error.ts';
import { JobDocument, JobParams, refusals } from './schemas.ts';

const Name = Type.Enum<[...typeof EXPORT_NAMES]>([...EXPORT_NAMES], { title: 'export' });
const Chosen = Type.Object({ member: Type.Optional(Type.String({ minLength: 1, maxLength: 40, title: 'member' })) });

const bytes = { schema: Type.Unsafe<Uint8Array>({ type: 'string', format: 'binary' }) };
const File = {
  description: 'The file',
  content: { 'text/csv': bytes, 'image/svg+xml': bytes, 'image/vnd.dxf': bytes, 'model/step': bytes },
};

/** A picture of ours holds no script, and what is opened by itself may fetch nothing. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";

/** What would come out well at another time; everything else is the job's own. */
const LATER: readonly ExportReason[] = ['solid-busy', 'solid-too-long'];

type Wanted = { readonly name: ExportName; readonly job: Job; readonly member: string | null };

/** A file with the headers of its answer, or the refusal that says why there is none. */
async function fileOf({ name, job, member }: Wanted, maker: StepMaker, log: App['log']) {
  const made = await writeExport(name, { plan: planInWords(job), job, member }, maker);
  if (!made.ok) {
    if (made.cause !== '') log.warn({ member: made.member, cause: made.cause }, 'a solid could not be made');
    const status = LATER.includes(made.reason) ? 503 : 422;
    throw new RequestError(status, `export-${made.reason}`, words(`export.reason.${made.reason}`, made));
  }
  const headers = {
    'content-type': mediaType(name),
    'content-disposition': attachment(name, [job.title, member ?? '']),
    'content-security-policy': POLICY,
  };
  return { headers, file: Buffer.from(made.text, 'utf8') };
}

export function exportRoutes(app: App, { jobs }: { readonly jobs: JobRepository }): void {
  const tags = ['exports'];
  const maker = stepMaker();
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
