import { expect } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import type { Finding } from '../../server/plan/finding.ts';

/** The job with a way out taken: the field must be there, and the job still be one. */
export function mended(job: Job, { field, value }: NonNullable<Finding['wayOut']>): Job {
  const document = structuredClone(job);
  const names = field.slice(1).split('/');
  const last = names.pop()!;
  const parent = names.reduce<unknown>((at, name) => (at as Record<string, unknown>)[name], document);
  expect(parent).toHaveProperty(last);
  (parent as Record<string, unknown>)[last] = value;
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.problems.map(({ message }) => message).join(', '));
  return parsed.job;
}
