/** Milliseconds in an hour. */
const HOUR = 3_600_000;

const TYPED = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/;

const typedAs = (moment: Date): string => (Number.isNaN(moment.getTime()) ? '' : moment.toISOString().slice(0, 16));

/**
 * What a clock on the wall shows so many hours later, as day and time are typed: '2026-11-26T09:40' and 2 hours give
 * '2026-11-26T11:40'. Clocks that are put forward or back in between are not thought of. Empty where nothing, or no day
 * of the calendar, was typed. Parts of a minute are dropped: the time is never later than it should be.
 */
export function wallClockAfter(taken: string, hours: number): string {
  if (!TYPED.test(taken)) return '';
  // both ends are read as if there were one time everywhere, so that only the hours count
  const from = new Date(`${taken}:00Z`);
  const then = typedAs(new Date(from.getTime() + hours * HOUR));
  return typedAs(from) === taken && TYPED.test(then) ? then : '';
}

/** Day and time as typed, to be read: '2026-11-26 09:40'. */
export const wallClockWords = (taken: string): string => taken.replace('T', ' ');
