import type { Job } from '../../server/job/job.ts';
import { valueAt } from './pointer.ts';
import { textOf, withText, type FieldForm } from './typed-text.ts';

/**
 * An angle with a side is typed as a size and a choice of two: the number pad of a phone often has no minus. In the job
 * it is one signed number, in its text as typed too, so that a side that was chosen before the number is kept.
 */
export const SIDED_ANGLE: FieldForm = { kind: 'number', mayBeEmpty: false };

const MINUS = /^\s*[-\u2212\u2013]/;

export type SidedText = { readonly negative: boolean; readonly size: string };

const sided = (text: string): SidedText => ({ negative: MINUS.test(text), size: text.replace(MINUS, '').trimStart() });

/** Side and size of the angle at a pointer, as typed or as it stands. */
export const sidedTextAt = (job: Job, pointer: string): SidedText =>
  sided(job.asTyped[pointer] ?? textOf(SIDED_ANGLE, valueAt(job, pointer), job));

const signed = ({ negative, size }: SidedText): string => (negative ? `-${size}` : size);

/** The job after a size was typed: the side stays, and a minus of one's own is the second side. */
export function withAngleSize(job: Job, pointer: string, text: string): Job {
  const typed = sided(text);
  const negative = typed.negative || sidedTextAt(job, pointer).negative;
  return withText(job, pointer, signed({ negative, size: typed.size }), SIDED_ANGLE);
}

/** The job after a side was chosen. */
export const withAngleSide = (job: Job, pointer: string, negative: boolean): Job =>
  withText(job, pointer, signed({ ...sidedTextAt(job, pointer), negative }), SIDED_ANGLE);
