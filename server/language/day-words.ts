import { MONTHS } from './en/months.ts';

/** A day as it reads everywhere but in a field: '2026-11-26' is '26 Nov 2026'. What is no day reads as it stands. */
export function dayWords(day: string): string {
  const [, year, month, date] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day) ?? [];
  const name = MONTHS[Number(month) - 1];
  return year === undefined || name === undefined ? day : `${String(Number(date))} ${name} ${year}`;
}
