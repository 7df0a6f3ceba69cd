import type { Job } from '../../server/job/job.ts';
import { freshSet, LEVEL_SETS } from '../../web/state/level-readings.ts';
import { hoop, withSite } from './made-up-site.ts';

export const NOON = '2026-11-26T12:00';

/** A hoop whose structure was read with these sets of readings. */
export const withSets = (...sets: Job['site']['level']['sets']): Job =>
  withSite({ level: { ...hoop.site.level, sets } });

/** Read once, with two levels. */
export const levelRead = withSets(freshSet('two-levels', NOON));
export const FIRST_ANGLE = `${LEVEL_SETS}/0/readings/0/angle`;
