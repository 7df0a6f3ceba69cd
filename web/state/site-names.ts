import type { Job } from '../../server/job/job.ts';
import { withValue } from './pointer.ts';
import { sitePlaces } from './site-places.ts';

export type NamedKind = 'point' | 'thing';

/** Keys whose text is the name of a point (the three of a plane stand in a list) or of a thing. */
const KEYS: Readonly<Record<NamedKind, readonly string[]>> = {
  point: ['named', 'from', 'to', 'point', '0', '1', '2'],
  thing: ['thing', 'on'],
};

const namesOf = (job: Job, kind: NamedKind): readonly string[] =>
  (kind === 'point' ? job.site.points : job.site.things).map(({ name }) => name);

/** Pointers of what names a point or a thing; none where two bear the name, since nobody can tell which is meant. */
export function placesOfName(job: Job, kind: NamedKind, name: string): readonly string[] {
  if (namesOf(job, kind).filter((one) => one === name).length !== 1) return [];
  return sitePlaces(job, (key, value) => value === name && KEYS[kind].includes(key));
}

/** The job with one text at a name and at everything that names it. */
export const withName = (job: Job, places: readonly string[], name: string): Job =>
  places.reduce((next, pointer) => withValue(next, pointer, name), job);

/** 'point 3': a name that nothing bears yet. */
export function freshName(word: string, taken: readonly string[]): string {
  const names = Array.from({ length: taken.length + 1 }, (_, index) => `${word} ${String(index + 1)}`);
  return names.find((name) => !taken.includes(name)) ?? word;
}
