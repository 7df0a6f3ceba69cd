import type { CameBack, Reading } from '../../server/job/came-back.ts';
import type { Job } from '../../server/job/job.ts';
import type { Reference } from '../../server/job/quantities.ts';
import type { CheckDimension } from '../../server/plan/frame.ts';
import { LONGEST_READING } from './limits.ts';
import { valueAt, withValue } from './pointer.ts';
import { withoutRow, withRowAdded } from './rows.ts';
import { readText, withChoice, withText, type FieldForm } from './typed-text.ts';

export const READINGS = '/cameBack/readings';

export type SizeReading = Extract<Reading, { reading: 'size' }>;

/** A size of the frame: the plan's key, and which one of them. */
export type SizeName = Pick<CheckDimension, 'key' | 'index'>;

/** A frame that came back, of which nothing is measured yet. */
export const freshCameBack: CameBack = {
  tapeAccuracy: 1, // a tape read with care by one person, ± [mm]; common practice, no source
  angleAccuracy: 0.2, // a good level or bevel, ± [degrees]; common practice, no source
  readings: [],
};

const LENGTH: FieldForm = { kind: 'length', mayBeEmpty: true };

export const readingsOf = (job: Job): readonly Reading[] => job.cameBack?.readings ?? [];

/** Where the reading of a size stands, the first where there are several; −1 where nobody measured it. */
export const placeOfSize = (readings: readonly Reading[], { key, index }: SizeName): number =>
  readings.findIndex((one) => one.reading === 'size' && one.check === key && one.index === index);

/** The field of a size: in the readings, or a name of its own that no reading answers to while there is none. */
export function sizeField(readings: readonly Reading[], size: SizeName): string {
  const at = placeOfSize(readings, size);
  return at < 0 ? `/cameBack/sizes/${size.key}/${String(size.index)}` : `${READINGS}/${String(at)}`;
}

const freshSize = ({ key, index, reference }: SizeName & { reference: Reference }): SizeReading => ({
  reading: 'size',
  check: key,
  index,
  reference,
  value: null,
  accuracy: null,
});

/** True where a reading holds nothing but its value, so that it goes when the value does. */
const holdsNothingElse = (job: Job, at: number, reference: Reference): boolean => {
  const row = readingsOf(job)[at];
  const accuracy = job.asTyped[`${READINGS}/${String(at)}/accuracy`] ?? '';
  return row?.reading === 'size' && row.reference === reference && row.accuracy === null && accuracy.trim() === '';
};

/**
 * The job after a text was typed as what was found for a size: the first letter makes the reading, an empty text takes
 * it away again, and a text that cannot be read stays.
 */
export function withSizeText(job: Job, size: SizeName & { reference: Reference }, text: string): Job {
  const at = placeOfSize(readingsOf(job), size);
  const empty = text.trim() === '';
  if (at < 0 && empty) return job;
  if (at >= 0 && empty && holdsNothingElse(job, at, size.reference)) return withoutRow(job, READINGS, at);
  const made = at < 0 ? withRowAdded(job, READINGS, freshSize(size)) : job;
  const pointer = `${sizeField(readingsOf(made), size)}/value`;
  if (at >= 0) return withText(made, pointer, text, LENGTH);
  // a fresh reading that no job may hold would have no earlier value to go back to
  const read = readText(LENGTH, text, job);
  const typed = { ...made, asTyped: { ...made.asTyped, [pointer]: text } };
  const possible = read.ok && read.value !== null && read.value > 0 && read.value <= LONGEST_READING;
  return possible ? withValue(typed, pointer, read.value) : typed;
}

/** The job with a size measured between other edges of the tube; where nobody measured it yet, it waits for its value. */
export function withSizeReference(job: Job, size: SizeName & { reference: Reference }, chosen: Reference): Job {
  const at = placeOfSize(readingsOf(job), size);
  if (at < 0)
    return chosen === size.reference ? job : withRowAdded(job, READINGS, freshSize({ ...size, reference: chosen }));
  const pointer = `${READINGS}/${String(at)}`;
  const next = withChoice(job, `${pointer}/reference`, chosen);
  const isUnmeasured = valueAt(job, `${pointer}/value`) === null && (job.asTyped[`${pointer}/value`] ?? '') === '';
  return isUnmeasured && holdsNothingElse(next, at, size.reference) ? withoutRow(next, READINGS, at) : next;
}

/** Indices of the readings that do not stand in the list of sizes: other kinds, and a size that is measured again. */
export const otherReadings = (readings: readonly Reading[], sizes: readonly SizeName[]): readonly number[] => {
  const listed = new Set(sizes.map((size) => placeOfSize(readings, size)));
  return readings.map((_, index) => index).filter((index) => !listed.has(index));
};

/** The job with fresh readings at the end of the list. */
export const withReadings = (job: Job, fresh: readonly Reading[]): Job =>
  fresh.reduce((next, reading) => withRowAdded(next, READINGS, reading), job);

/** Which reading of the job a pointer speaks of; −1 for none. */
export function readingOfField(field: string): number {
  const found = field.startsWith(`${READINGS}/`) ? /^\d+/.exec(field.slice(READINGS.length + 1)) : null;
  return found === null ? -1 : Number(found[0]);
}

/** Whether a reading is an angle; every other one is a length. */
export const isAngle = ({ reading }: Reading): boolean =>
  reading === 'turn' || reading === 'bevel' || reading === 'level';
