import type { Job } from '../../server/job/job.ts';
import type { LevelSet } from '../../server/job/level.ts';
import { freshSet, LEVEL_SETS, type SetKind } from '../../web/state/level-readings.ts';
import { hoop, withSite } from './made-up-site.ts';

export const NOON = '2026-11-26T12:00';

/** A hoop whose structure was read with these sets of readings. */
export const withSets = (...sets: Job['site']['level']['sets']): Job =>
  withSite({ level: { ...hoop.site.level, sets } });

/** A set whose readings all show nothing. */
export const readSet = (kind: SetKind): LevelSet => ({
  taken: NOON,
  note: '',
  readings: freshSet(kind).readings.map((one) =>
    one.reading === 'incline' ? { ...one, angle: 0 } : { ...one, height: 0 },
  ),
});

/** Read once, with two levels. */
export const levelRead = withSets(readSet('two-levels'));
/** Begun, with two levels, and not read yet. */
export const levelBegun = withSets(freshSet('two-levels'));
export const FIRST_ANGLE = `${LEVEL_SETS}/0/readings/0/angle`;
