import type { Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';

/** The job that a document of any version is taken as; an error where it is refused. */
export function upgraded(document: unknown): Job {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.problems.map(({ message }) => message).join(' '));
  return parsed.job;
}

/** What a document is refused for: code and field of each. */
export const problemsIn = (document: unknown) => {
  const parsed = parseJob(document);
  return parsed.ok ? [] : parsed.problems.map(({ code, field }) => `${code} ${field}`);
};
