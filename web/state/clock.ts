/** A saved time as a person says it: the hour today, else with its day. In the person's own zone and habit. */
export function clock(iso: string, now: Date = new Date()): string {
  const time = new Date(iso);
  if (Number.isNaN(time.getTime())) return iso;
  const today = time.toDateString() === now.toDateString();
  return new Intl.DateTimeFormat(undefined, {
    ...(today ? {} : { day: 'numeric', month: 'short', year: 'numeric' }),
    hour: '2-digit',
    minute: '2-digit',
  }).format(time);
}
