import type { Job } from '../../server/job/job.ts';
import type { Site } from '../../server/job/site.ts';
import { words } from '../../server/language/words.ts';
import { withValue } from './pointer.ts';
import { sitePlaces } from './site-places.ts';

export type NamedKind = 'point' | 'thing';

/** What bears a name on the site, by the list of the job that it stands in. */
const LISTS = { points: 'point', things: 'thing', legs: 'leg', directions: 'line' } as const;
type SiteList = keyof typeof LISTS;

/** What something of the site is called everywhere on the page: its name, or without one its kind and number. */
export const siteName = (list: SiteList, name: string, index: number): string =>
  name === '' ? words(`${LISTS[list]}.number`, { number: index + 1 }) : name;

/** The same for what a field of the job belongs to: '/site/legs/0/foot/at' is of leg 1; empty for anything else. */
export function nameAtField(site: Site, field: string): string {
  const [, list = '', index = ''] = /^\/site\/(points|things|legs|directions)\/(\d+)(?:\/|$)/.exec(field) ?? [];
  const one = list === '' ? undefined : site[list as SiteList][Number(index)];
  return one === undefined ? '' : siteName(list as SiteList, one.name, Number(index));
}

export type NameOption = { readonly value: string; readonly words: string };

/** Those of a list that a test is true of, to choose from; one without a name by its number. */
export const namesIn = (
  list: 'points' | 'things',
  site: Pick<Site, 'points' | 'things'>,
  is: (index: number) => boolean = () => true,
): readonly NameOption[] =>
  site[list].flatMap(({ name }, index) => (is(index) ? [{ value: name, words: siteName(list, name, index) }] : []));

/** The same with a name that is gone, so that it is seen which was meant. */
export const nameOptions = (names: readonly NameOption[], current: string): readonly NameOption[] =>
  names.some(({ value }) => value === current)
    ? names
    : [{ value: current, words: current === '' ? words('name.notChosen') : current }, ...names];

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

/** Whether something refers to a thing or a point that has no name: then nobody can tell which is meant. */
export const isNameWanted = (job: Job, kind: NamedKind): boolean =>
  sitePlaces(job, (key, value) => value === '' && KEYS[kind].includes(key)).length > 0;

/** The job with one text at a name and at everything that names it. */
export const withName = (job: Job, places: readonly string[], name: string): Job =>
  places.reduce((next, pointer) => withValue(next, pointer, name), job);

/** 'port leg', else 'port leg 2': a name that nothing bears yet. */
export function freeName(name: string, taken: readonly string[]): string {
  const names = [name, ...taken.map((_, index) => `${name} ${String(index + 2)}`)];
  return names.find((one) => !taken.includes(one)) ?? name;
}

/** 'point 3': a name that nothing bears yet. */
export function freshName(word: string, taken: readonly string[]): string {
  const names = Array.from({ length: taken.length + 1 }, (_, index) => `${word} ${String(index + 1)}`);
  return names.find((name) => !taken.includes(name)) ?? word;
}
