import type { GapPlan } from '../../../plan/gap.ts';
import type { SiteView } from '../../../plan/site-view.ts';
import { add, scale, subtract, unit } from '../../geometry/vector.ts';
import { project, rounded, type Projection } from '../../views/projection.ts';
import type { DrawnSite } from './drawn-site.ts';

/**
 * The least gap of every thing that is drawn, from the tube's surface to the thing's: along the line between their
 * nearest places, half a diameter of the tube on from its centreline, and as long as the gap.
 *
 * @param outsideDiameter of the frame's tubes [mm]
 */
export function gapLines(
  gaps: readonly GapPlan[],
  { things, legs }: DrawnSite,
  outsideDiameter: number,
  view: Projection,
): SiteView['gaps'] {
  return gaps.flatMap(({ thing, field, rows: [least] }) => {
    if (least === undefined || !things.some((one) => one.field === field)) return [];
    const leg = least.of === 'leg' ? legs.find(({ laid }) => laid.field === least.field) : undefined;
    const radius = (leg?.laid.outsideDiameter ?? outsideDiameter) / 2;
    const way = unit(subtract(least.onThing, least.onTube));
    const value = least.gap.value;
    const [from, to] =
      way === undefined
        ? [least.onTube, least.onThing]
        : [add(least.onTube, scale(way, radius)), add(least.onTube, scale(way, radius + value))];
    return [{ thing, field, from: rounded(project(view, from)), to: rounded(project(view, to)), value }];
  });
}
