import type { SitePlace } from '../../../job/direction.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import type { Off } from '../laid-site.ts';

/** The pointers of a typed place whose coordinates are as doubtful as the tape; a named point has its own doubts. */
export const placeFields = (place: SitePlace, field: string): string[] =>
  'named' in place ? [] : ['x', 'y', 'z'].map((axis) => `${field}/${axis}`);

/** Typed coordinates with what each is taken off [mm], in the structure's axes. */
export const typedPlace = ({ x, y, z }: Vector3, field: string, off: Off): Vector3 => ({
  x: x + off(`${field}/x`),
  y: y + off(`${field}/y`),
  z: z + off(`${field}/z`),
});

/**
 * A place of the site in the structure's axes [mm]: a point by its name, or coordinates.
 *
 * @param field JSON pointer of the place
 * @param points where the points of the site are; one that cannot be told is not among them
 */
export function sitePlace(
  place: SitePlace,
  field: string,
  points: ReadonlyMap<string, Vector3>,
  off: Off,
): { point: Vector3 } | { finding: Finding } {
  if (!('named' in place)) return { point: typedPlace(place, field, off) };
  const point = points.get(place.named);
  return point === undefined
    ? { finding: finding('site-name-missing', 'stop', `${field}/named`, { name: place.named }) }
    : { point };
}
