import type { Site } from '../../server/job/site.ts';
import type { Placing, Slope, Standing } from '../../server/job/standing.ts';
import type { Point } from '../../server/plan/figure.ts';
import { ALONG, directionOfSide } from './standing-axes.ts';
import { cornersInOrder, firstPlace, lastPlace } from './tube-places.ts';
import type { Tube } from './tubes.ts';

export const PLACING = '/site/placing';
export const PAIRS = `${PLACING}/pairs`;
export const STANDING = '/site/standing';
export const SLOPES = `${STANDING}/slopes`;

/** Places that are needed before a frame cannot turn any more. */
export const LEAST_PAIRS = 3;

type Pair = Extract<Placing, { by: 'points' }>['pairs'][number];

/** Another end or corner with another point, the first of all where there are no more; null while there is no frame or no point. */
export function freshPair(tubes: readonly Tube[], { points }: Site, index: number): Pair | null {
  const places = cornersInOrder(tubes);
  const at = places[index] ?? places[0];
  const point = points[index] ?? points[0];
  return at === undefined || point === undefined ? null : { at, point: point.name };
}

/** The other way of placing, by axes as a new job has it, seen from above with ahead up; null for points where there are not three of them, or no frame to lay on them. */
export function freshPlacing(
  by: Placing['by'],
  tubes: readonly Tube[],
  site: Site,
  origin: Point | null,
): Placing | null {
  if (by === 'axes') {
    return { by, origin: origin ?? { x: 0, y: 0, z: 0 }, x: directionOfSide('starboard'), y: directionOfSide('ahead') };
  }
  if (site.points.length < LEAST_PAIRS) return null;
  const pairs = Array.from({ length: LEAST_PAIRS }, (_, index) => freshPair(tubes, site, index));
  const known = pairs.filter((pair) => pair !== null);
  return known.length < LEAST_PAIRS ? null : { by, pairs: known };
}

/** From end to end of the first tube: the feet of a hoop. */
export function freshHinge([tube]: readonly Tube[]): Standing['hinge'] {
  return tube === undefined ? null : { from: firstPlace(tube), to: lastPlace(tube) };
}

/** Level now: along y first, along x where y is asked for already. */
export const freshSlope = (slopes: readonly Slope[]): Slope => ({
  along: { ...(slopes.some(({ along }) => along.y !== 0) ? ALONG.x : ALONG.y) },
  angle: 0,
  to: 'level',
});

export function freshHeight([tube]: readonly Tube[]): Standing['height'] {
  if (tube === undefined) return null;
  return { at: firstPlace(tube), over: { x: 0, y: 0, z: 0 }, value: 0, to: 'structure' };
}

/** A swing to type over [degrees]; our own choice. */
export const FRESH_SWING: NonNullable<Standing['swing']> = { from: 0, to: 90 };
