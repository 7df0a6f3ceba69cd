import { checkValue, type Schema } from './check-value.ts';
import { Job } from './job.ts';
import type { JobProblem } from './problem.ts';
import { describeProblem } from './problem-words.ts';
import { upgradeJob } from './upgrade.ts';

/** A document with more refused values than this is not worth telling more about. */
const MOST_PROBLEMS = 100;

/** Every value that a schema refuses, in words, up to MOST_PROBLEMS; empty where it fits. */
export function problemsOf(schema: Schema, value: unknown): JobProblem[] {
  const problems: JobProblem[] = [];
  checkValue(schema, value, { field: '', title: schema.title ?? 'value' }, (refusal) => {
    if (problems.length < MOST_PROBLEMS) problems.push(describeProblem(refusal));
  });
  return problems;
}

export type ParsedJob =
  { readonly ok: true; readonly job: Job } | { readonly ok: false; readonly problems: readonly JobProblem[] };

/** True where nothing was refused; the walk over the schema is what makes the value a Job. */
const isJob = (_document: unknown, problems: readonly JobProblem[]): _document is Job => problems.length === 0;

/** Any value at all to a Job of this version, or to what is wrong with it. Never throws. */
export function parseJob(input: unknown): ParsedJob {
  const upgraded = upgradeJob(input);
  if (!upgraded.ok) return { ok: false, problems: [upgraded.problem] };
  const problems = problemsOf(Job, upgraded.document);
  return isJob(upgraded.document, problems) ? { ok: true, job: upgraded.document } : { ok: false, problems };
}
