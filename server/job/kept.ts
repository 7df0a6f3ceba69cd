import { Type, type Static } from 'typebox';
import { isPlainObject } from './check-value.ts';
import { JOB_VERSION } from './job.ts';
import { Machine } from './machine.ts';
import type { JobProblem } from './problem.ts';
import { PositiveLength } from './quantities.ts';
import { OwnGrade, TubeTolerance } from './tube.ts';
import { upgradeJob } from './upgrade.ts';
import { problemsOf } from './validate.ts';

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

/** The document as part of a job of its version, brought up to date there and taken out again. */
function upgraded(kind: KeptKind, input: unknown, version: number) {
  const [first, second] = PLACES[kind];
  const part = second === undefined ? input : { [second]: input };
  const job = upgradeJob({ format: 'hoopwright-job', version, [first]: part });
  if (!job.ok) return job;
  const whole = job.document[first];
  if (second !== undefined) return { ok: true, document: isPlainObject(whole) ? whole[second] : undefined } as const;
  if (kind !== 'size' || !isPlainObject(whole)) return { ok: true, document: whole } as const;
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
