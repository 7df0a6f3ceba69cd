import type { Level } from '../../../job/level.ts';
import type { SiteDoubt } from '../laid-site.ts';
import { accuracyOf } from './level-equations.ts';

/** Every level reading with its accuracy [degrees for an incline, mm for a height], by the pointer of the reading. */
export const levelDoubts = (level: Level): SiteDoubt[] =>
  level.sets.flatMap((set, index) =>
    set.readings.map((reading, count) => ({
      field: `/site/level/sets/${index}/readings/${count}`,
      plusMinus: accuracyOf(reading, level),
      from: 'level' as const,
      name: '',
    })),
  );
