import type { SitePlace } from '../../../job/direction.ts';
import type { Site } from '../../../job/site.ts';
import type { SiteDoubt } from '../laid-site.ts';
import { placeFields } from '../points/site-places.ts';

/** What was measured to place the frame: where its origin is, and over what its height counts, each by the tape. */
export function placingDoubts({
  placing,
  standing,
  tapeAccuracy,
}: Pick<Site, 'placing' | 'standing' | 'tapeAccuracy'>): SiteDoubt[] {
  const doubts = (place: SitePlace, field: string) =>
    placeFields(place, field).map((one): SiteDoubt => ({
      field: one,
      plusMinus: tapeAccuracy,
      from: 'placing',
      name: '',
    }));
  return [
    ...(placing.by === 'axes' ? doubts(placing.origin, '/site/placing/origin') : []),
    ...(standing.height === null ? [] : doubts(standing.height.over, '/site/standing/height/over')),
  ];
}
