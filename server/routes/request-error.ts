import { KEPT_NAMES, type Kept, type KeptKind } from '../job/kept.ts';
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

export const unknownKept = (kind: KeptKind, id: string): RequestError =>
  new RequestError(
    404,
    'kept-unknown',
    `The shop keeps no ${KEPT_NAMES[kind]} ${id}. Look for it in the list of the shop.`,
  );

export const deletedKept = (kind: KeptKind, id: string): RequestError =>
  new RequestError(410, 'kept-deleted', `The ${KEPT_NAMES[kind]} ${id} has been deleted. Restore it to go on with it.`);

export const takenName = (kind: KeptKind, other: Kept): RequestError =>
  new RequestError(
    409,
    'name-taken',
    `The shop already keeps a ${KEPT_NAMES[kind]} named "${other.document.name}". Choose another name, or save over that one.`,
    { more: { other } },
  );

export const staleKept = (kind: KeptKind, yours: Kept['document'], theirs: Kept): RequestError =>
  new RequestError(
    409,
    'stale-save',
    `Revision ${String(theirs.revision)} of this ${KEPT_NAMES[kind]} was saved meanwhile. Nothing is lost: look at both and save again.`,
    { more: { yours, theirs } },
  );
