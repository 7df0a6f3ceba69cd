import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Job } from '../../server/job/job.ts';
import type { JobProblem } from '../../server/job/problem.ts';
import { parseJob } from '../../server/job/validate.ts';

type Loose = Record<string, unknown>;

/** The demo job with one value put in place of another. */
export function withValue(pointer: string, value: unknown, job: Job = landingStage()): unknown {
  const document: unknown = structuredClone(job);
  const names = pointer.slice(1).split('/');
  const last = names.pop()!;
  const parent = names.reduce((at, name) => (at as Loose)[name], document);
  (parent as Loose)[last] = value;
  return document;
}

/** What is refused in any value at all. */
export const problemsIn = (input: unknown): readonly JobProblem[] => {
  const parsed = parseJob(input);
  return parsed.ok ? [] : parsed.problems;
};
export const shown = (input: unknown) => problemsIn(input).map(({ code, field }) => `${code} ${field}`);
