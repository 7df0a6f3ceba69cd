import type { Job } from '../../server/job/job.ts';
import {
  formatClosely,
  formatInOtherUnit,
  lengthForField,
  numberForField,
} from '../../server/language/length-format.ts';
import { parseLength, type LengthProblem } from '../../server/language/length-text.ts';
import { parseMoney, parseNumber, type NumberProblem } from '../../server/language/number-text.ts';
import { formatMoney } from '../../server/language/quantity-format.ts';
import { words } from '../../server/language/words.ts';
import { valueAt, withValue } from './pointer.ts';

/** What a typed field holds: a length in the job's unit, a plain number, or money in the job's currency. */
export type FieldKind = 'length' | 'number' | 'money';

/** How a field is read: its kind, and whether an empty text means 'nothing' (null) or is a slip. */
export type FieldForm = { readonly kind: FieldKind; readonly mayBeEmpty: boolean };

/** How a job writes its lengths and its money. */
export type Written = Pick<Job, 'units' | 'rates'>;

type Reading =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly why: `length.${LengthProblem}` | `number.${NumberProblem}` };

export function readText(form: FieldForm, text: string, job: Written): Reading {
  if (form.mayBeEmpty && text.trim() === '') return { ok: true, value: null };
  if (form.kind === 'length') {
    const length = parseLength(text, job.units.length);
    return length.ok ? { ok: true, value: length.mm } : { ok: false, why: `length.${length.code}` };
  }
  const number = form.kind === 'money' ? parseMoney(text, job.rates.minorDigits) : parseNumber(text);
  return number.ok ? { ok: true, value: number.value } : { ok: false, why: `number.${number.code}` };
}

/** The text of a value that nobody typed, or that was typed in another unit. */
export function textOf(form: FieldForm, value: unknown, job: Written): string {
  if (typeof value !== 'number') return '';
  if (form.kind === 'length') return lengthForField(value, job.units);
  if (form.kind === 'number') return numberForField(value);
  return (value / 10 ** job.rates.minorDigits).toFixed(job.rates.minorDigits);
}

/** A value in words, for 'the plan still uses …'. */
export function wordsOfValue(form: FieldForm, value: number, job: Written): string {
  if (form.kind === 'length') return formatClosely(value, job.units);
  if (form.kind === 'number') return numberForField(value);
  return formatMoney(value, job.rates.currency, job.rates.minorDigits);
}

/** How a field stands: its text, what was understood, and what is wrong with it. */
export type FieldState = {
  readonly text: string;
  /** The value in the other unit of length; empty where there is none to show. */
  readonly understood: string;
  /** Why the text cannot be used; empty where it can. */
  readonly trouble: string;
};

/** True where a text names its own unit, so that none needs to stand beside it. */
export const namesUnit = (text: string): boolean => /[a-z"'′″”’]/i.test(text);

/** What was understood, in the unit that the text does not already say: 1 1/2 in is shown as 38.1 mm. */
function understoodOf(mm: number, text: string, units: Job['units']): string {
  const typedIn = !namesUnit(text) ? units.length : /m/i.test(text) ? 'mm' : 'inch';
  return formatInOtherUnit(mm, { ...units, length: typedIn });
}

/** What a field is made of: the value and the text as typed that stand at its pointer, and how the job writes numbers. */
export type FieldContent = { readonly value: unknown; readonly typed: string | undefined; readonly job: Written };

/** A field of the job. */
export const fieldState = (form: FieldForm, pointer: string, job: Job, refusal: string | undefined): FieldState =>
  contentState(form, { value: valueAt(job, pointer), typed: job.asTyped[pointer], job }, refusal);

/** The same from what the field is made of, so that a field of a long table needs no look at the others. */
export function contentState(form: FieldForm, content: FieldContent, refusal: string | undefined): FieldState {
  const { value, typed, job } = content;
  if (typed === undefined) {
    const understood = form.kind === 'length' && typeof value === 'number' ? formatInOtherUnit(value, job.units) : '';
    return { text: textOf(form, value, job), understood, trouble: refusal ?? '' };
  }
  const reading = readText(form, typed, job);
  const kept =
    typeof value === 'number'
      ? words('field.kept', { value: wordsOfValue(form, value, job) })
      : words('field.keptNothing');
  if (!reading.ok) return { text: typed, understood: '', trouble: `${words(reading.why)} ${kept}` };
  const understood =
    form.kind === 'length' && reading.value !== null ? understoodOf(reading.value, typed, job.units) : '';
  if (Object.is(reading.value, value ?? null) && refusal === undefined) return { text: typed, understood, trouble: '' };
  const reason = refusal === undefined ? '' : `${words('field.outOfRange', { reason: refusal })} `;
  return { text: typed, understood, trouble: reason + kept };
}

/** The job after a text was typed: the text always stays, the value follows where it can be read. */
export function withText(job: Job, pointer: string, text: string, form: FieldForm): Job {
  const reading = readText(form, text, job);
  const typed = { ...job, asTyped: { ...job.asTyped, [pointer]: text } };
  return reading.ok ? withValue(typed, pointer, reading.value) : typed;
}

/** The job after a value was chosen: texts typed there or below it no longer hold. */
export function withChoice(job: Job, pointer: string, value: unknown): Job {
  const asTyped = Object.fromEntries(
    Object.entries(job.asTyped).filter(([key]) => key !== pointer && !key.startsWith(`${pointer}/`)),
  );
  return { ...withValue(job, pointer, value), asTyped };
}

/** The job in the other unit of length: a text without a unit would change its meaning, so its number is shown anew. */
export function withUnitOfLength(job: Job, length: Job['units']['length']): Job {
  const asTyped = Object.fromEntries(
    Object.entries(job.asTyped).filter(([pointer, text]) => {
      const before = parseLength(text, job.units.length);
      const after = parseLength(text, length);
      return !before.ok || !after.ok || before.mm === after.mm || before.mm !== valueAt(job, pointer);
    }),
  );
  return { ...job, asTyped, units: { ...job.units, length } };
}
