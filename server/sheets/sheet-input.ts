import { describeFinding, isFindingCode } from '../language/finding-words.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Job } from '../job/job.ts';
import type { Finding } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import type { Way } from '../plan/correction.ts';
import { formatClosely, formatLength } from '../language/length-format.ts';
import { HEIGHTS } from './ink.ts';
import { paragraph, stacked, type Block } from './text-block.ts';

/** What every sheet is made from. */
export type SheetInput = {
  readonly plan: Plan;
  readonly job: Job;
  /** The saved revision that the plan was computed from, with its ISO 8601 date; null for a job never saved. */
  readonly revision: { readonly number: number; readonly date: string } | null;
  /** Which revision of its quote this is, with its ISO 8601 date; null or left out: a draft that nobody was given. */
  readonly issued?: { readonly number: number; readonly issuedAt: string } | null;
};

/** 'Ø 38.1 mm × 1.7 mm, 316L'. */
export function tubeWords({ tube, units }: Job): string {
  const grade = tube.grade.from === 'catalogue' ? tube.grade.key : tube.grade.name;
  return words('sheet.tube-of', {
    diameter: formatLength(tube.outsideDiameter, units),
    wall: formatClosely(tube.wall, units),
    grade,
  });
}

/** The way that the sheets show, or undefined where nothing came back or none is possible. */
export function chosenWay({ correction }: Plan): Way | undefined {
  return correction === null ? undefined : correction.ways.find((way) => way.key === correction.chosen);
}

/** Inches of marks and cuts are read off a rule to 1/32 at the least, whatever the rest of the job is said in. */
export function finely(input: SheetInput): SheetInput {
  const { units } = input.job;
  const fraction = units.fraction === 64 ? 64 : 32;
  return { ...input, job: { ...input.job, units: { ...units, fraction } } };
}

/** What a sheet's small print says that it was computed from. */
export function computedFrom({ job, plan, revision }: SheetInput): string {
  const parts = [
    revision === null
      ? words('sheet.from-unsaved')
      : words('sheet.from-revision', { number: revision.number, date: revision.date.slice(0, 10) }),
    tubeWords(job),
    plan.springback === null
      ? ''
      : words('sheet.from-springback', { method: wordsOf('method', plan.springback.method) }),
    job.cameBack === null
      ? ''
      : words('sheet.from-readings', { accuracy: formatLength(job.cameBack.tapeAccuracy, job.units) }),
  ];
  return `${words('sheet.from')} ${parts.filter((part) => part !== '').join('; ')}.`;
}

/** What keeps the work from being done as typed; stands above everything else on a sheet. */
export const stops = (input: SheetInput, fields: RegExp, width: number): Block[] =>
  notes(input, ({ grade, field }) => grade === 'stop' && fields.test(field), width);

/** Cautions and notes of a sheet's fields; they stand below. */
export const remarks = (input: SheetInput, fields: RegExp, width: number): Block[] =>
  notes(input, ({ grade, field }) => grade !== 'stop' && fields.test(field), width);

/** A finding as a sheet says it: 'CAUTION: …'. */
export const findingWords = (finding: Finding, { units }: Job): string =>
  `${wordsOf('grade', finding.grade).toUpperCase()}: ${describeFinding(finding, units)}`;

/** What a code means, where the plan has no finding that says it with its numbers. */
export const codeWords = (code: string, { units }: Job): string =>
  isFindingCode(code)
    ? describeFinding({ code, grade: 'stop', field: '', data: {}, wayOut: null }, units)
    : code.replaceAll('-', ' ');

/** Findings, gravest first, each as one paragraph; what is said twice stands once. */
export function findingBlocks(findings: readonly Finding[], job: Job, width: number): Block[] {
  const order = ['stop', 'caution', 'note'];
  const sorted = findings.toSorted((a, b) => order.indexOf(a.grade) - order.indexOf(b.grade));
  const said = new Map(sorted.map((finding) => [findingWords(finding, job), finding.grade]));
  return [...said].map(([text, grade]) =>
    paragraph(text, width, { height: HEIGHTS.small, weight: grade === 'note' ? 400 : 600 }),
  );
}

/** Findings under their head, gravest first, with the first of them. */
export function notes({ plan, job }: SheetInput, about: (finding: Finding) => boolean, width: number): Block[] {
  const [first, ...rest] = findingBlocks(plan.findings.filter(about), job, width);
  const head = paragraph(words('sheet.notes'), width, { weight: 600 });
  return first === undefined ? [] : [stacked([head, first]), ...rest];
}
