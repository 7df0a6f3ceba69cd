import type { JobProblem } from '../job/problem.ts';

/** A refusal of a request: its status, its code and its words, with whatever else the answer carries. */
export class RequestError extends Error {
  override readonly name = 'RequestError';
  readonly statusCode: number;
  readonly code: string;
  readonly problems: readonly JobProblem[];
  readonly more: Readonly<Record<string, unknown>>;

  constructor(
    statusCode: number,
    code: string,
    message: string,
    rest: { problems?: readonly JobProblem[]; more?: Readonly<Record<string, unknown>> } = {},
  ) {
    super(message);
    this.statusCode = statusCode;
    this.code = code;
    this.problems = rest.problems ?? [];
    this.more = rest.more ?? {};
  }
}

export const unknownJob = (id: string): RequestError =>
  new RequestError(404, 'job-unknown', `There is no job ${id}. Look for it in the list of jobs.`);

export const deletedJob = (id: string): RequestError =>
  new RequestError(410, 'job-deleted', `The job ${id} has been deleted. Restore it to go on with it.`);
