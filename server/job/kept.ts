import { Type, type Static } from 'typebox';
import { isPlainObject, type Document } from './check-value.ts';
import { JOB_VERSION } from './job.ts';
import { Machine } from './machine.ts';
import { describeProblem } from './problem-words.ts';
import type { JobProblem } from './problem.ts';
import { PositiveLength, ShortText } from './quantities.ts';
import { OwnGrade, TubeTolerance } from './tube.ts';
import { Rates } from './rates.ts';
import { upgradeJob } from './upgrade.ts';
import { problemsOf } from './validate.ts';
import { WELD_FORMS, WeldSettings } from './welding.ts';

export const KEPT_KINDS = ['machine', 'size', 'grade', 'settings', 'rates'] as const;
export type KeptKind = (typeof KEPT_KINDS)[number];

/** What each kind is called in a sentence: a machine, this set of weld settings. */
export const KEPT_NAMES: Readonly<Record<KeptKind, string>> = {
  machine: 'machine',
  size: 'size',
  grade: 'grade',
  settings: 'set of weld settings',
  rates: 'list of rates',
};

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

/** Weld settings that the shop has proved, with the weld, the tube and the grade that they were proved on. */
export const KeptSettings = Type.Object(
  {
    name: ShortText('settings name', 60),
    form: Type.Enum<[...typeof WELD_FORMS]>([...WELD_FORMS], { title: 'form of weld' }),
    outsideDiameter: PositiveLength(400, 'outside diameter'),
    wall: PositiveLength(40, 'wall'),
    /** Its key in the catalogue, or the name of the shop's own. */
    grade: ShortText('grade', 60),
    settings: WeldSettings,
  },
  { title: 'kept weld settings', additionalProperties: false },
);
export type KeptSettings = Static<typeof KeptSettings>;

/** What is kept of each kind; each has a name of its own. */
export const KEPT_SCHEMAS = {
  machine: Machine,
  size: KeptSize,
  grade: OwnGrade,
  settings: KeptSettings,
  rates: Rates,
} as const;
export type KeptDocuments = { machine: Machine; size: KeptSize; grade: OwnGrade; settings: KeptSettings; rates: Rates };

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

/** How a kind goes into a job, so that the upgrade of jobs upgrades it too, and comes out again. */
type Passage = {
  /** The first version of the job format that had it. */
  readonly since: number;
  readonly into: (document: unknown) => Document;
  readonly outOf: (job: Document, document: unknown) => unknown;
};

const PASSAGES: Readonly<Record<KeptKind, Passage>> = {
  machine: { since: 1, into: (machine) => ({ machine }), outOf: ({ machine }) => machine },
  size: {
    since: 1,
    into: (tube) => ({ tube }),
    outOf: ({ tube }) => {
      if (!isPlainObject(tube)) return tube;
      const { heat: _heat, ...size } = tube; // a heat belongs to one delivery, not to a size
      return size;
    },
  },
  grade: {
    since: 1,
    into: (grade) => ({ tube: { grade } }),
    outOf: ({ tube }) => (isPlainObject(tube) ? tube['grade'] : undefined),
  },
  settings: {
    since: 4,
    into: (kept) => ({ welding: { butt: isPlainObject(kept) ? kept['settings'] : undefined } }),
    outOf: ({ welding }, kept) =>
      isPlainObject(kept) ? { ...kept, settings: isPlainObject(welding) ? welding['butt'] : undefined } : kept,
  },
  rates: { since: 6, into: (rates) => ({ rates }), outOf: ({ rates }) => rates },
};

/** The document as part of a job of its version, brought up to date there and taken out again. */
function upgraded(kind: KeptKind, input: unknown, version: number) {
  const { since, into, outOf } = PASSAGES[kind];
  if (version < since) return { ok: false, problem: tooOld(version, since) } as const;
  const job = upgradeJob({ format: 'hoopwright-job', version, ...into(input) });
  return job.ok ? ({ ok: true, document: outOf(job.document, input) } as const) : job;
}

const tooOld = (version: number, since: number): JobProblem =>
  describeProblem({
    code: 'below-range',
    field: '/version',
    title: 'version of the job format',
    value: version,
    wanted: 'whole number',
    allowed: { low: since, high: JOB_VERSION },
  });

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
