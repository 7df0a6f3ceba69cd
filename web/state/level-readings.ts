import type { Job } from '../../server/job/job.ts';
import type { LevelReading, LevelSet } from '../../server/job/level.ts';

export const LEVEL_SETS = '/site/level/sets';

/** Ways to read how a structure lies, by what one has: two lines for a level, three marks, a waterline and a level. */
export const SET_KINDS = ['two-levels', 'three-heights', 'marks-and-level'] as const;
export type SetKind = (typeof SET_KINDS)[number];

type Vector = Extract<LevelReading, { reading: 'incline' }>['along'];

export const AHEAD: Vector = { x: 1, y: 0, z: 0 };
export const PORT: Vector = { x: 0, y: 1, z: 0 };

/** A level laid along a line; 0 is a place to type over. */
export const freshIncline = (along: Vector): LevelReading => ({ reading: 'incline', along, angle: 0, accuracy: null });

/** A mark and its height; where it stands is to be typed over. */
export const freshHeight = (x: number, y: number): LevelReading => ({
  reading: 'height',
  at: { x, y, z: 0 },
  height: 0,
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

/** @param taken what the clock on the wall shows */
export const freshSet = (kind: SetKind, taken: string): LevelSet => ({
  taken,
  note: '',
  readings: freshReadings(kind),
});

/** The same lines and marks once more, with the last numbers to be typed over. */
export const setAgain = ({ readings }: LevelSet, taken: string): LevelSet => ({ taken, note: '', readings });

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
