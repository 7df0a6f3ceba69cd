import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { JobProblem } from '../../server/job/problem.ts';
import type { ErrorAnswer, JobSummary, Revision, SavedJob, StaleSave } from '../../server/job/saved-job.ts';
import type { CatalogueGradeKey, OwnGrade } from '../../server/job/tube.ts';
import type { Plan } from '../../server/plan/plan.ts';

/** Usual sizes and grades to pick from, the sources that workings name by key, and what a new job starts with. */
export type Catalogue = {
  readonly sizes: readonly {
    readonly family: string;
    readonly name: string;
    readonly outsideDiameter: number;
    readonly wall: number;
  }[];
  readonly grades: readonly (Omit<OwnGrade, 'from' | 'name'> & { readonly key: CatalogueGradeKey })[];
  readonly sources: Readonly<Record<string, { readonly title: string; readonly place: string; readonly kind: string }>>;
  /** A complete job of each shape, with starting values. */
  readonly newJobs: Readonly<Record<Frame['shape'], Job>>;
};

/** Every answer is a value: what came, or why nothing did. `unreachable` is the network or a fault of the server. */
export type Answer<Body> =
  | { readonly kind: 'done'; readonly body: Body }
  | { readonly kind: 'refused'; readonly problems: readonly JobProblem[]; readonly reason: string }
  | { readonly kind: 'conflict'; readonly theirs: SavedJob }
  | { readonly kind: 'unreachable'; readonly reason: string };

async function ask<Body>(method: string, path: string, body?: unknown): Promise<Answer<Body>> {
  const json = { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
  let response: Response;
  let text: string;
  try {
    response = await fetch(path, { method, ...(body === undefined ? {} : json) });
    text = await response.text();
  } catch (error) {
    return { kind: 'unreachable', reason: error instanceof Error ? error.message : String(error) };
  }
  if (response.ok) return { kind: 'done', body: (text === '' ? undefined : JSON.parse(text)) as Body };
  const isJson = response.headers.get('content-type')?.includes('json') === true;
  if (!isJson || response.status >= 500) return { kind: 'unreachable', reason: `${String(response.status)} ${text}` };
  if (response.status === 409) return { kind: 'conflict', theirs: (JSON.parse(text) as StaleSave).theirs };
  const { error } = JSON.parse(text) as ErrorAnswer;
  return { kind: 'refused', problems: error.problems ?? [], reason: error.message };
}

const at = (id: string, rest = ''): string => `/api/jobs/${encodeURIComponent(id)}${rest}`;

export const api = {
  jobs: (search: string) => ask<readonly JobSummary[]>('GET', `/api/jobs?q=${encodeURIComponent(search)}`),
  open: (id: string) => ask<SavedJob>('GET', at(id)),
  create: (job: Job) => ask<SavedJob>('POST', '/api/jobs', { job }),
  save: (id: string, job: Job, basedOn: number) => ask<SavedJob>('PUT', at(id), { job, basedOn }),
  remove: (id: string) => ask<undefined>('DELETE', at(id)),
  restore: (id: string) => ask<SavedJob>('POST', at(id, '/restore')),
  duplicate: (id: string) => ask<SavedJob>('POST', at(id, '/duplicate')),
  revisions: (id: string) => ask<readonly Revision[]>('GET', at(id, '/revisions')),
  revision: (id: string, number: number) => ask<SavedJob>('GET', at(id, `/revisions/${String(number)}`)),
  plan: (job: Job) => ask<Plan>('POST', '/api/plan', job),
  catalogue: () => ask<Catalogue>('GET', '/api/catalogue'),
};

export const sheetAddress = (id: string, sheet: string): string => at(id, `/sheets/${sheet}.pdf`);
