import type { Purge } from '../../job/purge.ts';

/** Whether a hole is drilled through the wall under a saddle end, so that its bore opens into the tube below. */
export function opensUnder(
  { underSaddles, except }: Pick<Purge['holes'], 'underSaddles' | 'except'>,
  member: string,
  end: 'start' | 'finish',
): boolean {
  const excepted = except.some((one) => one.member === member && one.end === end);
  return (underSaddles === 'all') !== excepted;
}
