import type { Site } from '../../../job/site.ts';
import type { SiteDoubt } from '../laid-site.ts';
import { directionDoubts } from '../level/directions.ts';
import { placeFields } from '../points/site-places.ts';

/**
 * Measured values of the legs themselves: a foot that is typed as coordinates, the lean of a surface read by a level, and
 * where a head is marked on its tube, along it and square to it, each as good as the tape or the level.
 */
export const legDoubts = ({ legs, tapeAccuracy, level }: Site): SiteDoubt[] =>
  legs.flatMap(({ name, foot, head }, index) => {
    const field = `/site/legs/${String(index)}`;
    const typed = placeFields(foot.at, `${field}/foot/at`);
    const marked = 'named' in head.at ? [] : [`${field}/head/at`, `${field}/head/at/across`];
    const plusMinus = tapeAccuracy;
    return [
      ...typed.map((pointer): SiteDoubt => ({ field: pointer, plusMinus, from: 'point', name })),
      ...directionDoubts(foot.surface, `${field}/foot/surface`, level.angleAccuracy).map((doubt): SiteDoubt => ({
        ...doubt,
        from: 'thing',
        name,
      })),
      ...marked.map((pointer): SiteDoubt => ({ field: pointer, plusMinus, from: 'frame', name: '' })),
    ];
  });
