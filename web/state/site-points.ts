import type { SiteDistance, SitePoint } from '../../server/job/site-point.ts';
import type { Site } from '../../server/job/site.ts';
import { words } from '../../server/language/words.ts';
import { setInUse } from './level-readings.ts';
import { freshName, namesIn, type NameOption } from './site-names.ts';

export const SITE_POINTS = '/site/points';

type Found = SitePoint['at'];
export type FoundBy = Found['by'];

const WAYS = ['typed', 'plumb', 'distances'] as const satisfies readonly FoundBy[];

const typed: Found = { by: 'typed', point: { x: 0, y: 0, z: 0 }, accuracy: null };

export const freshSitePoint = ({ points }: Site): SitePoint => ({
  name: freshName(
    words('point.fresh'),
    points.map(({ name }) => name),
  ),
  at: typed,
});

/** Whether nothing of a point was typed yet but its name. */
export const isFreshPoint = ({ at }: SitePoint): boolean => JSON.stringify(at) === JSON.stringify(typed);

/** Names of the other points, which one can be measured from. */
export const otherPoints = (site: Site, index: number): readonly NameOption[] =>
  namesIn('points', site, (place) => place !== index);

/** A tape is laid over something; a place to type over [mm], our own choice. */
const FIRST_DISTANCE = 1000;

export const freshDistance = (from: string): SiteDistance => ({ from, distance: FIRST_DISTANCE, accuracy: null });

/** A way of finding a point to begin with; null where nothing is there to measure from, or no level was read. */
export function freshFound(by: FoundBy, site: Site, index: number): Found | null {
  const [first, second, third] = otherPoints(site, index).map(({ value }) => value);
  if (by === 'typed') return typed;
  if (by === 'plumb') {
    const set = setInUse(site.level.sets);
    return first === undefined || set === 0 ? null : { by, from: first, ahead: 0, port: 0, up: 0, set, accuracy: null };
  }
  if (first === undefined || second === undefined) return null;
  const from = [first, second, ...(third === undefined ? [] : [third])];
  return { by, distances: from.map(freshDistance), on: null, towards: 'up' };
}

export const foundOptions = (current: FoundBy, site: Site, index: number) =>
  WAYS.filter((by) => by === current || freshFound(by, site, index) !== null).map((value) => ({
    value,
    words: words(`point.by.${value}`),
  }));

/** Of two places that fit, the one further this way; up first, as most points hang above what they are measured from. */
export const TOWARDS_WAYS = ['up', 'down', 'ahead', 'back', 'port', 'starboard'] as const satisfies readonly Extract<
  Found,
  { by: 'distances' }
>['towards'][];
