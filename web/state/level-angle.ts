import type { Job } from '../../server/job/job.ts';
import { numberForField } from '../../server/language/length-format.ts';
import { words } from '../../server/language/words.ts';
import { valueAt, withValue } from './pointer.ts';
import { readText, textOf, withText, type FieldForm } from './typed-text.ts';

/**
 * An angle with a side is typed as a size and a choice of two: the number pad of a phone often has no minus. In the job
 * it is one signed number, in its text as typed too, so that a side that was chosen before the number is kept.
 */
export const SIDED_ANGLE: FieldForm = { kind: 'number', mayBeEmpty: false };
/** The same that may not be read yet. */
export const READ_ANGLE: FieldForm = { kind: 'number', mayBeEmpty: true };

const MINUS = /^\s*[-\u2212\u2013]/;

export type SidedText = { readonly negative: boolean; readonly size: string };

const sided = (text: string): SidedText => ({ negative: MINUS.test(text), size: text.replace(MINUS, '').trimStart() });

/** Side and size of the angle at a pointer, as typed or as it stands. */
export const sidedTextAt = (job: Job, pointer: string): SidedText =>
  sided(job.asTyped[pointer] ?? textOf(SIDED_ANGLE, valueAt(job, pointer), job));

const signed = ({ negative, size }: SidedText): string => (negative ? `-${size}` : size);

const isNotRead = (form: FieldForm, { size }: SidedText): boolean => form.mayBeEmpty && size.trim() === '';

function withSided(job: Job, pointer: string, text: SidedText, form: FieldForm): Job {
  if (!isNotRead(form, text)) return withText(job, pointer, signed(text), form);
  // a side alone is no number yet, but it stays
  return withValue({ ...job, asTyped: { ...job.asTyped, [pointer]: signed(text) } }, pointer, null);
}

/** The job after a size was typed: the side stays, and a minus of one's own is the second side. */
export function withAngleSize(job: Job, pointer: string, text: string, form: FieldForm = SIDED_ANGLE): Job {
  const typed = sided(text);
  const negative = typed.negative || sidedTextAt(job, pointer).negative;
  return withSided(job, pointer, { negative, size: typed.size }, form);
}

/** The job after a side was chosen. */
export const withAngleSide = (job: Job, pointer: string, negative: boolean, form: FieldForm = SIDED_ANGLE): Job =>
  withSided(job, pointer, { ...sidedTextAt(job, pointer), negative }, form);

/** How an angle with a side is said: what its two sides are called, positive first, and the most that it may be [degrees]. */
type SidedWords = { readonly sides: readonly [string, string]; readonly most: number; readonly form: FieldForm };

const sizeAndSide = (size: string, negative: boolean, [first, second]: SidedWords['sides']): string =>
  words('angle.sided', { size, side: negative ? second : first });

/** Why the text at a pointer cannot be used, by its size and its side; empty where it can. */
export function sidedTrouble(job: Job, pointer: string, refused: boolean, { sides, most, form }: SidedWords): string {
  const value = valueAt(job, pointer);
  const text = sidedTextAt(job, pointer);
  if (isNotRead(form, text)) return '';
  const reading = readText(form, signed(text), job);
  const kept =
    typeof value === 'number'
      ? words('field.kept', { value: sizeAndSide(numberForField(Math.abs(value)), value < 0, sides) })
      : words('field.keptNothing');
  if (!reading.ok) return `${words(reading.why)} ${kept}`;
  const isUsed = reading.value === value || job.asTyped[pointer] === undefined;
  if (isUsed && !refused) return '';
  const tooLarge = words('angle.tooLarge', { given: sizeAndSide(text.size.trim(), text.negative, sides), most });
  return refused ? `${tooLarge} ${kept}` : kept;
}
