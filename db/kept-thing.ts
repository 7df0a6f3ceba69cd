import type { Selectable } from 'kysely';
import { Type, type Static } from 'typebox';
import { JOB_VERSION } from '../server/job/job.ts';
import { Machine } from '../server/job/machine.ts';
import type { JobProblem } from '../server/job/problem.ts';
import { PositiveLength } from '../server/job/quantities.ts';
import { OwnGrade, TubeTolerance } from '../server/job/tube.ts';
import { upgradeJob } from '../server/job/upgrade.ts';
import { problemsOf } from '../server/job/validate.ts';
import { searchText } from './stored-job.ts';
import type { KeptTable } from './tables/tables.ts';

export const KEPT_KINDS = ['machine', 'size', 'grade'] as const;
export type KeptKind = (typeof KEPT_KINDS)[number];

/** A size of tube that the shop buys, by its own name for it. */
export const KeptSize = Type.Object(
  {
    name: Type.String({ maxLength: 60, title: 'size name' }),
    outsideDiameter: PositiveLength(400, 'outside diameter'),
    wall: PositiveLength(40, 'wall'),
    tolerance: TubeTolerance,
  },
  { title: 'size of tube', additionalProperties: false },
);
export type KeptSize = Static<typeof KeptSize>;

/** What is kept of each kind; each has a name of its own. */
export const KEPT_SCHEMAS = { machine: Machine, size: KeptSize, grade: OwnGrade } as const;
export type KeptDocuments = { machine: Machine; size: KeptSize; grade: OwnGrade };

/** Something that the shop keeps, as its latest save left it (ISO 8601). */
export type Kept<Kind extends KeptKind = KeptKind> = {
  readonly id: string;
  readonly revision: number;
  readonly savedAt: string;
  readonly document: KeptDocuments[Kind];
};

export type ParsedKept<Kind extends KeptKind> =
  | { readonly ok: true; readonly document: KeptDocuments[Kind] }
  | { readonly ok: false; readonly problems: readonly JobProblem[] };

/** Where each kind stands in a job, so that the upgrade of jobs upgrades it too. */
const PLACES: Readonly<Record<KeptKind, readonly [string, ...string[]]>> = {
  machine: ['machine'],
  size: ['tube'],
  grade: ['tube', 'grade'],
};

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The document as part of a job of its version, brought up to date there and taken out again. */
function upgraded(kind: KeptKind, input: unknown, version: number) {
  const [first, second] = PLACES[kind];
  const part = second === undefined ? input : { [second]: input };
  const job = upgradeJob({ format: 'hoopwright-job', version, [first]: part });
  if (!job.ok) return job;
  const whole = job.document[first];
  if (second !== undefined) return { ok: true, document: isPlain(whole) ? whole[second] : undefined } as const;
  if (kind !== 'size' || !isPlain(whole)) return { ok: true, document: whole } as const;
  const { heat: _heat, ...size } = whole; // a heat belongs to one delivery, not to a size
  return { ok: true, document: size } as const;
}

/** True where nothing was refused; the walk over the schema is what makes the value a document of its kind. */
const isKept = <Kind extends KeptKind>(
  _kind: Kind,
  _document: unknown,
  problems: readonly JobProblem[],
): _document is KeptDocuments[Kind] => problems.length === 0;

/**
 * Any value at all to a document of its kind, or to what is wrong with it. Never throws.
 *
 * @param version of the job format that it was written in; an older document is upgraded, a newer one refused
 */
export function parseKept<Kind extends KeptKind>(
  kind: Kind,
  input: unknown,
  version: number = JOB_VERSION,
): ParsedKept<Kind> {
  const current = version === JOB_VERSION ? ({ ok: true, document: input } as const) : upgraded(kind, input, version);
  if (!current.ok) return { ok: false, problems: [current.problem] };
  const problems = problemsOf(KEPT_SCHEMAS[kind], current.document);
  return isKept(kind, current.document, problems) ? { ok: true, document: current.document } : { ok: false, problems };
}

/** A name as it is compared: letters in lower case, without spaces round it. */
export const nameKey = (name: string): string => searchText(name).trim();

/** A stored thing; one that was written by an older version is upgraded on the way out. */
export function keptThing<Kind extends KeptKind>(kind: Kind, row: Selectable<KeptTable>): Kept<Kind> {
  const parsed = parseKept(kind, JSON.parse(row.document), row.version);
  if (!parsed.ok) {
    const [problem] = parsed.problems;
    throw new Error(`The kept ${kind} ${row.id} cannot be read: ${problem?.message ?? ''}`);
  }
  return { id: row.id, revision: row.revision, savedAt: row.saved_at, document: parsed.document };
}

/** The columns of a kept thing that follow from its document; one that does not fit its kind is a fault. */
export function keptColumns<Kind extends KeptKind>(kind: Kind, document: KeptDocuments[Kind]) {
  const parsed = parseKept(kind, document);
  if (!parsed.ok) throw new Error(`This ${kind} cannot be kept: ${parsed.problems[0]?.message ?? ''}`);
  const { name } = parsed.document;
  return { kind, name, name_key: nameKey(name), version: JOB_VERSION, document: JSON.stringify(parsed.document) };
}
