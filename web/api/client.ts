import { words } from '../../server/language/words.ts';
import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { JobProblem } from '../../server/job/problem.ts';
import type { ErrorAnswer, JobSummary, Revision, SavedJob } from '../../server/job/saved-job.ts';
import type { Kept, KeptDocuments, KeptKind } from '../../server/job/kept.ts';
import type { CatalogueGradeKey, OwnGrade, TubeTolerance } from '../../server/job/tube.ts';
import type { WayKey } from '../../server/plan/correction.ts';
import type { ListedTaking, StockRow, Taking } from '../../server/job/stock-row.ts';
import type { StockBar } from '../../server/job/stock.ts';
import type { Nesting, NestingRequest } from '../../server/nesting/nesting.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { OwnTime } from '../../server/plan/quote.ts';

/** Usual sizes and grades to pick from, the sources that workings name by key, and what a new job starts with. */
export type Catalogue = {
  readonly sizes: readonly {
    readonly family: string;
    readonly name: string;
    readonly outsideDiameter: number;
    readonly wall: number;
    /** Key of the source that lists this size. */
    readonly source?: string;
    /** The standard whose tolerance such tube is usually bought to. */
    readonly tolerance?: ToleranceStandard | null;
  }[];
  readonly grades: readonly (Omit<OwnGrade, 'from' | 'name'> & {
    readonly key: CatalogueGradeKey;
    /** True where K and n are an estimate. */
    readonly hardeningEstimated: boolean;
    /** Key of the source of each value, by the value's name. */
    readonly sources: Readonly<Record<string, string>>;
  })[];
  readonly sources: Readonly<Record<string, { readonly title: string; readonly place: string; readonly kind: string }>>;
  /** A complete job of each shape, with starting values. */
  readonly newJobs: Readonly<Record<Frame['shape'], Job>>;
};

export type ToleranceStandard = Extract<TubeTolerance, { by: 'standard' }>['standard'];

/** What the shop keeps for all its jobs: its machines, its own sizes of tube, its grades, weld settings and lists of rates. */
export type Shop = {
  readonly machines: readonly Kept<'machine'>[];
  readonly sizes: readonly Kept<'size'>[];
  readonly grades: readonly Kept<'grade'>[];
  readonly settings: readonly Kept<'settings'>[];
  readonly rates: readonly Kept<'rates'>[];
};

/** A quote as it was given to the customer: its amounts in minor units of its currency, as they were that day. */
export type IssuedQuote = {
  /** Revision of the quote, from 1 on. */
  readonly number: number;
  readonly jobRevision: number;
  readonly issuedAt: string;
  readonly reference: string;
  /** Days, ISO 8601; empty where none was given. */
  readonly date: string;
  readonly validUntil: string;
  readonly scope: 'frame' | WayKey;
  readonly total: number;
  readonly currency: string;
  readonly minorDigits: number;
  /** Lines that stood open, and how many rested on examples. */
  readonly open: number;
  readonly examples: number;
};

/** What a quote that was issued can be read as. */
export type QuoteFile = 'quote.pdf' | 'quote-working.pdf' | 'quote.csv';

/**
 * Every answer is a value: what came, or why nothing did, as a person reads it. `unreachable` is the network or a fault of
 * the server: the same may well be done the next time.
 */
export type Answer<Body, Theirs = SavedJob> =
  | { readonly kind: 'done'; readonly body: Body }
  | { readonly kind: 'refused'; readonly problems: readonly JobProblem[]; readonly reason: string }
  | { readonly kind: 'conflict'; readonly theirs: Theirs }
  | { readonly kind: 'unreachable'; readonly reason: string };

async function ask<Body, Theirs = SavedJob>(
  method: string,
  path: string,
  body?: unknown,
): Promise<Answer<Body, Theirs>> {
  const json = { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
  let response: Response;
  let text: string;
  try {
    response = await fetch(path, { method, ...(body === undefined ? {} : json) });
    text = await response.text();
  } catch {
    // nothing came back, or not all of it: what the browser says of that is in its own words
    return { kind: 'unreachable', reason: words('answer.none') };
  }
  const isJson = response.headers.get('content-type')?.includes('json') === true;
  if (response.ok && (isJson || text === ''))
    return { kind: 'done', body: (text === '' ? undefined : JSON.parse(text)) as Body };
  // a server that is busy says in words when to ask again
  const isFault = response.status >= 500 && response.status !== 503;
  if (!isJson || isFault) return { kind: 'unreachable', reason: words('answer.fault') };
  const { error, theirs } = JSON.parse(text) as ErrorAnswer & { readonly theirs?: Theirs };
  if (response.status === 409 && theirs !== undefined) return { kind: 'conflict', theirs };
  return { kind: 'refused', problems: error.problems ?? [], reason: error.message };
}

/** `key` is made by the page: the same request sent again takes nothing more. */
export type BarsToTake = Pick<Taking, 'jobId' | 'together' | 'title' | 'layout'> & { readonly key: string };

const stockAt = (id: string, rest = ''): string => `/api/stock/${encodeURIComponent(id)}${rest}`;
const nestingAt = (id: string): string => `/api/nestings/${encodeURIComponent(id)}`;

const at = (id: string, rest = ''): string => `/api/jobs/${encodeURIComponent(id)}${rest}`;

const KEPT_LISTS: Readonly<Record<KeptKind, string>> = {
  machine: 'machines',
  size: 'sizes',
  grade: 'grades',
  settings: 'settings',
  rates: 'rates',
};

const keptAt = (kind: KeptKind, id = '', rest = ''): string =>
  `/api/shop/${KEPT_LISTS[kind]}${id === '' ? '' : `/${encodeURIComponent(id)}`}${rest}`;

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
  quotes: (id: string) => ask<readonly IssuedQuote[]>('GET', at(id, '/quotes')),
  /** Issues the revision that the page last saved; where somebody else saved meanwhile, it is refused. */
  issueQuote: (id: string, basedOn: number) => ask<IssuedQuote>('POST', at(id, '/quotes'), { basedOn }),
  /** What operations really took in all jobs of the shop. */
  ownTimes: () => ask<readonly OwnTime[]>('GET', '/api/shop/times'),
  plan: (job: Job) => ask<Plan>('POST', '/api/plan', job),
  catalogue: () => ask<Catalogue>('GET', '/api/catalogue'),
  shop: () => ask<Shop>('GET', '/api/shop'),
  keep: <Kind extends KeptKind>(kind: Kind, document: KeptDocuments[Kind]) =>
    ask<Kept<Kind>, Kept<Kind>>('POST', keptAt(kind), { document }),
  saveKept: <Kind extends KeptKind>(kind: Kind, id: string, document: KeptDocuments[Kind], basedOn: number) =>
    ask<Kept<Kind>, Kept<Kind>>('PUT', keptAt(kind, id), { document, basedOn }),
  removeKept: (kind: KeptKind, id: string) => ask<undefined>('DELETE', keptAt(kind, id)),
  restoreKept: <Kind extends KeptKind>(kind: Kind, id: string) =>
    ask<Kept<Kind>, Kept<Kind>>('POST', keptAt(kind, id, '/restore')),
  stock: () => ask<readonly StockRow[]>('GET', '/api/stock'),
  addBar: (document: StockBar) => ask<StockRow, StockRow>('POST', '/api/stock', { document }),
  saveBar: (id: string, document: StockBar, basedOn: number) =>
    ask<StockRow, StockRow>('PUT', stockAt(id), { document, basedOn }),
  removeBar: (id: string) => ask<undefined>('DELETE', stockAt(id)),
  restoreBar: (id: string) => ask<StockRow, StockRow>('POST', stockAt(id, '/restore')),
  takings: () => ask<readonly ListedTaking[]>('GET', '/api/stock/takings'),
  taking: (number: number) => ask<Taking>('GET', `/api/stock/takings/${String(number)}`),
  take: (bars: BarsToTake) => ask<Taking>('POST', '/api/stock/takings', bars),
  putBack: (taking: number) => ask<undefined>('DELETE', `/api/stock/takings/${String(taking)}`),
  nest: (request: NestingRequest) => ask<Nesting>('POST', '/api/nestings', request),
  nesting: (id: string) => ask<Nesting>('GET', nestingAt(id)),
  cancelNesting: (id: string) => ask<undefined>('DELETE', nestingAt(id)),
};

export const sheetAddress = (id: string, sheet: string): string => at(id, `/sheets/${sheet}.pdf`);

export const exportAddress = (id: string, file: string): string => at(id, `/exports/${file}`);

export const quoteAddress = (id: string, number: number, file: QuoteFile): string =>
  at(id, `/quotes/${String(number)}/${file}`);
