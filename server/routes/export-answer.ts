import type { ExportReason } from '../exports/export-file.ts';
import { attachment, issuedName } from '../exports/file-name.ts';
import type { StepMaker } from '../exports/step-maker.ts';
import { mediaType, writeExport, type ExportName } from '../exports/write-export.ts';
import type { Job } from '../job/job.ts';
import { words } from '../language/words.ts';
import { planInWords } from '../plan-in-words.ts';
import type { Plan } from '../plan/plan.ts';
import type { App } from './app-type.ts';
import { RequestError } from './request-error.ts';

/** A picture of ours holds no script, and what is opened by itself may fetch nothing. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";

/** What would come out well at another time; everything else is the job's own. */
const LATER: readonly ExportReason[] = ['solid-busy', 'solid-too-long'];

type Wanted = {
  readonly name: ExportName;
  readonly job: Job;
  readonly member: string | null;
  /** Where it is not the job's plan of today. */
  readonly plan?: Plan;
  /** Which quote that went out it is of. */
  readonly issued?: { readonly number: number };
};

/** A file with the headers of its answer, or the refusal that says why there is none. */
export async function fileOf(
  { name, job, member, plan = planInWords(job), issued }: Wanted,
  maker: StepMaker,
  log: App['log'],
) {
  const made = await writeExport(name, { plan, job, member }, maker);
  if (!made.ok) {
    if (made.cause !== '') log.warn({ member: made.member, cause: made.cause }, 'a solid could not be made');
    const status = LATER.includes(made.reason) ? 503 : 422;
    throw new RequestError(status, `export-${made.reason}`, words(`export.reason.${made.reason}`, made));
  }
  const headers = {
    'content-type': mediaType(name),
    'content-disposition': attachment(issued === undefined ? name : issuedName(name, issued), [
      job.title,
      member ?? '',
    ]),
    'content-security-policy': POLICY,
  };
  return { headers, file: Buffer.from(made.text, 'utf8') };
}
