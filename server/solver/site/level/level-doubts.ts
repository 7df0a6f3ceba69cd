import type { Direction } from '../../../job/direction.ts';
import type { Site } from '../../../job/site.ts';
import { EXACT, type SiteDoubt } from '../laid-site.ts';
import { setBefore } from './level-drift.ts';
import { accuracyOf } from './level-equations.ts';
import { scatterOf } from './scatter.ts';
import { setInUse } from './sets-read.ts';
import { solveLevels } from './solve-levels.ts';

/**
 * Every level reading that anything rests on, with its accuracy [degrees for an incline, mm for a height], by its pointer:
 * of the set in use, the one that it is compared with, and those that a point or a lean names. Readings that scatter
 * further than their accuracies are as doubtful as they scatter.
 */
export function levelDoubts(site: Site): SiteDoubt[] {
  const { level } = site;
  const { levels } = solveLevels(level, EXACT);
  const now = setInUse(level);
  const used = new Set([now, setBefore(levels, now), ...setsNamed(site)]);
  return level.sets.flatMap((set, index) => {
    const solved = levels[index] ?? null;
    if (solved === null || !used.has(index)) return [];
    const scatter = scatterOf(set, level, solved);
    return set.readings.map((reading, count): SiteDoubt => ({
      field: `/site/level/sets/${index}/readings/${count}`,
      plusMinus: scatter * accuracyOf(reading, level),
      from: 'level',
      name: '',
      ...(reading.reading === 'incline' ? { unit: 'deg' } : {}),
    }));
  });
}

/** Sets that a point or a lean off plumb is told by, by their places in the list. */
function setsNamed({ points, things, directions, legs }: Site): number[] {
  const leans: Direction[] = [
    ...directions.map(({ direction }) => direction),
    ...legs.map(({ foot }) => foot.surface),
    ...things.flatMap(({ shape, swing }) => [
      ...(shape.shape === 'cylinder' ? [shape.axis] : []),
      ...(shape.shape === 'plane' && shape.plane.by === 'normal' ? [shape.plane.normal] : []),
      ...(swing === null ? [] : [swing.axis]),
    ]),
  ];
  return [
    ...leans.flatMap((lean) => (lean.by === 'plumb' ? [lean.set - 1] : [])),
    ...points.flatMap(({ at }) => (at.by === 'plumb' ? [at.set - 1] : [])),
  ];
}
