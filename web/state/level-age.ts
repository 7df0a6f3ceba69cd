import { wallClockAfter } from '../../server/language/wall-clock.ts';

/**
 * How old readings are. unknown: nobody noted when they were taken. ahead: the time is still to come, so that it or the
 * clock is wrong. `until` is when they stop being believed, of the same clock as `taken`.
 */
export type LevelAge =
  | { readonly is: 'unknown' }
  | { readonly is: 'ahead' }
  | { readonly is: 'fresh' | 'old'; readonly minutes: number; readonly until: string };

/** Two clocks in one crew are seldom closer [min]; our own choice. */
const CLOCKS_DIFFER = 5;

/** The hands of a wall clock in minutes, as if there were one time everywhere; undefined for what is no time. */
const minutesOf = (time: string): number | undefined =>
  wallClockAfter(time, 0) === '' ? undefined : Date.parse(`${time}:00Z`) / 60_000;

const two = (part: number): string => String(part).padStart(2, '0');

/** What the clock on the wall shows where the person is: '2026-11-26T09:40'. */
export const wallClock = (time: Date): string =>
  [
    `${String(time.getFullYear()).padStart(4, '0')}-${two(time.getMonth() + 1)}-${two(time.getDate())}`,
    `${two(time.getHours())}:${two(time.getMinutes())}`,
  ].join('T');

/** The same, now. */
export const wallClockNow = (): string => wallClock(new Date());

/**
 * @param taken when the readings were taken, of a clock on the wall; empty: not noted
 * @param goodFor how long they are believed [h]
 * @param now the same clock now
 */
export function ageOf(taken: string, goodFor: number, now: string): LevelAge {
  const [then, present] = [minutesOf(taken), minutesOf(now)];
  if (then === undefined || present === undefined) return { is: 'unknown' };
  const minutes = present - then;
  if (minutes < -CLOCKS_DIFFER) return { is: 'ahead' };
  const until = wallClockAfter(taken, goodFor);
  const end = minutesOf(until);
  return { is: end !== undefined && present > end ? 'old' : 'fresh', minutes: Math.max(0, minutes), until };
}
