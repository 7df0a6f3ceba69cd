import { dayWords } from '../../server/language/day-words.ts';

const two = (count: number): string => String(count).padStart(2, '0');

/** A saved time as a person says it: the hour today, else with its day. In the person's own zone and habit of hours. */
export function clock(iso: string, now: Date = new Date()): string {
  const time = new Date(iso);
  if (Number.isNaN(time.getTime())) return iso;
  const hour = new Intl.DateTimeFormat(undefined, { hour: '2-digit', minute: '2-digit' }).format(time);
  if (time.toDateString() === now.toDateString()) return hour;
  const day = `${String(time.getFullYear())}-${two(time.getMonth() + 1)}-${two(time.getDate())}`;
  return `${dayWords(day)}, ${hour}`;
}
