import type { Site } from '../../../job/site.ts';
import type { SiteDoubt } from '../laid-site.ts';
import { isFirst } from './named.ts';
import { placeFields } from './site-places.ts';

/** The measured values of points [mm], each to its own accuracy or to that of the tape on site. */
export function pointDoubts({ points, tapeAccuracy }: Pick<Site, 'points' | 'tapeAccuracy'>): SiteDoubt[] {
  return points.flatMap(({ name, at }, index) => {
    if (!isFirst(points, index)) return []; // nothing rests on it
    const field = `/site/points/${String(index)}/at`;
    const doubt = (part: string, accuracy: number | null): SiteDoubt => ({
      field: `${field}/${part}`,
      plusMinus: accuracy ?? tapeAccuracy,
      from: 'point',
      name,
    });
    switch (at.by) {
      case 'typed':
        return placeFields(at.point, 'point').map((part) => doubt(part, at.accuracy));
      case 'plumb':
        return ['ahead', 'port', 'up'].map((part) => doubt(part, at.accuracy));
      case 'distances':
        return at.distances.map(({ accuracy }, which) => doubt(`distances/${String(which)}/distance`, accuracy));
    }
  });
}
