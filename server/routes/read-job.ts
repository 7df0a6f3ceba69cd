import type { Job } from '../job/job.ts';
import { parseJob } from '../job/validate.ts';
import { RequestError } from './request-error.ts';

/** A job out of a request, upgraded and held against its schema; refused with every problem that it has. */
export function readJob(input: unknown): Job {
  const parsed = parseJob(input);
  if (parsed.ok) return parsed.job;
  const { problems } = parsed;
  const count = problems.length === 1 ? 'one value' : `${String(problems.length)} values`;
  const message = `This job has ${count} that cannot be taken. ${problems[0]?.message ?? ''}`;
  throw new RequestError(422, 'job-not-valid', message, { problems });
}
