/** A day as a person says it, in his own habit: '2026-11-26' reads '26 Nov 2026'. What is no day reads as it stands. */
export function dayWords(day: string): string {
  const time = new Date(`${day}T00:00:00Z`);
  if (day === '' || Number.isNaN(time.getTime())) return day;
  // a day has no zone of its own
  return new Intl.DateTimeFormat(undefined, {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  }).format(time);
}
