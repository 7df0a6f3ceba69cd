import type { Job } from '../../server/job/job.ts';
import type { LevelReading, LevelSet } from '../../server/job/level.ts';
import { withValue } from './pointer.ts';

export const LEVEL_SETS = '/site/level/sets';

/** Ways to read how a structure lies, by what one has: two lines for a level, three marks, a waterline and a level. */
export const SET_KINDS = ['two-levels', 'three-heights', 'marks-and-level'] as const;
export type SetKind = (typeof SET_KINDS)[number];

type Vector = Extract<LevelReading, { reading: 'incline' }>['along'];

export const AHEAD: Vector = { x: 1, y: 0, z: 0 };
export const PORT: Vector = { x: 0, y: 1, z: 0 };

/** A level laid along a line, not read yet. */
export const freshIncline = (along: Vector): LevelReading => ({
  reading: 'incline',
  along,
  angle: null,
  accuracy: null,
});

/** A mark, its height not read yet; where it stands is to be typed over. */
export const freshHeight = (x: number, y: number): LevelReading => ({
  reading: 'height',
  at: { x, y, z: 0 },
  height: null,
  accuracy: null,
});

/** So far apart three marks stand to begin with [mm]; places to type over, our own choice. */
const APART = 1000;

/** The rows that a way of reading takes. */
export function freshReadings(kind: SetKind): LevelReading[] {
  const [first, ahead, port] = [freshHeight(0, 0), freshHeight(APART, 0), freshHeight(0, APART)];
  if (kind === 'two-levels') return [freshIncline(AHEAD), freshIncline(PORT)];
  return kind === 'three-heights' ? [first, ahead, port] : [first, ahead, freshIncline(PORT)];
}

/** A set that is begun: when it is read is noted with its first number. */
export const freshSet = (kind: SetKind): LevelSet => ({ taken: '', note: '', readings: freshReadings(kind) });

const unread = (reading: LevelReading): LevelReading =>
  reading.reading === 'incline' ? { ...reading, angle: null } : { ...reading, height: null };

/** The same lines and marks once more, to be read again. */
export const setAgain = ({ readings }: LevelSet): LevelSet => ({ taken: '', note: '', readings: readings.map(unread) });

const valueOf = (reading: LevelReading): number | null =>
  reading.reading === 'incline' ? reading.angle : reading.height;

/** Pointer within a set to the number that is read first. */
export const firstToRead = ({ readings }: LevelSet): string =>
  readings[0]?.reading === 'height' ? 'readings/0/height' : 'readings/0/angle';

/** Whether every reading of a set is typed: until then it counts for nothing. */
export const isRead = ({ readings }: LevelSet): boolean => readings.every((reading) => valueOf(reading) !== null);

/** The set that counts now, counted from 1: the last that is read; 0: none. */
export const setInUse = (sets: readonly LevelSet[]): number => sets.findLastIndex(isRead) + 1;

const hasNumber = ({ readings }: LevelSet): boolean => readings.some((reading) => valueOf(reading) !== null);

/**
 * The job after a number of a set was typed; with its first number the time is noted, where nobody has done so.
 *
 * @param now what the clock on the wall shows
 */
export function withTimeNoted(before: Job, after: Job, set: number, now: string): Job {
  const [was, is] = [before.site.level.sets[set], after.site.level.sets[set]];
  if (was === undefined || is === undefined) return after;
  const isFirst = !hasNumber(was) && hasNumber(is) && is.taken === '';
  return isFirst ? withValue(after, `${LEVEL_SETS}/${String(set)}/taken`, now) : after;
}

/** Which way of reading rows are still untouched of; null once anything was typed. */
export function untouchedKind(job: Job, set: number): SetKind | null {
  const readings = job.site.level.sets[set]?.readings ?? [];
  const pointer = `${LEVEL_SETS}/${String(set)}/readings/`;
  if (Object.keys(job.asTyped).some((key) => key.startsWith(pointer))) return null;
  const text = JSON.stringify(readings);
  return SET_KINDS.find((kind) => JSON.stringify(freshReadings(kind)) === text) ?? null;
}

/** Lines that a level is laid along in most boats and ramps; any other is typed. */
export type AlongKey = 'ahead' | 'port';

/** null: any other direction, and none. */
export function alongKey({ x, y, z }: Vector): AlongKey | null {
  if (z !== 0) return null;
  if (y === 0 && x > 0) return 'ahead';
  return x === 0 && y > 0 ? 'port' : null;
}
