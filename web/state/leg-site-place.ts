import type { SitePlace } from '../../server/job/direction.ts';
import { words } from '../../server/language/words.ts';
import type { SitePlan } from '../../server/plan/site.ts';
import { nameOptions, type NameOption } from './site-names.ts';

/** Coordinates first, then the points by name; one that is gone stays, so that it is seen which was meant. */
export const placeOptions = (names: readonly NameOption[], named: string | null) => [
  { value: null, words: words('sitePlace.byCoordinates') },
  ...(named === null ? names : nameOptions(names, named)),
];

/** To whole tenths, as a tape is read [mm]. */
const tenths = (value: number): number => Math.round(value * 10) / 10;

/** Where a named place is, as coordinates to type over; the origin where that is not known. */
export function coordinatesOf(place: SitePlace, plan: SitePlan | null): Exclude<SitePlace, { named: string }> {
  if (!('named' in place)) return place;
  const point = plan?.points.find(({ name }) => name === place.named);
  if (point === undefined) return { x: 0, y: 0, z: 0 };
  return { x: tenths(point.x.value), y: tenths(point.y.value), z: tenths(point.z.value) };
}
