import type { Opening } from './bores.ts';
import type { Passing } from './feed-and-vents.ts';

/** Outside diameter of a hose that is pushed through a hole as a lance [mm]; our own choice. */
export const LANCE = 4;
/** Least bore of a hole that a lance goes through with room for the gas to come back [mm]: over 1 mm more; our own choice. */
export const LEAST_LANCE_HOLE = LANCE + 1.1;

/** Whether a lance is pushed through a hole of its own bore. A plug, a tape or a dam has one hole for it and one to vent. */
const takesRoom = ({ kind }: Opening): boolean => kind === 'hole' || kind === 'plate';

/** The hole that is too narrow for the lance that has to go through it; null where there is none. */
export const tightForLance = ({ lance, feed }: Passing): Opening | null =>
  lance && feed !== null && takesRoom(feed) && feed.bore < LEAST_LANCE_HOLE ? feed : null;

/** Bore of one hole with the area that lets gas out of a vent [mm]: beside a lance √(b² − 4²). */
export const freeBore = (vent: Opening, passing: Passing): number =>
  passing.lance && takesRoom(vent) && tightForLance(passing) === null
    ? Math.sqrt(vent.bore ** 2 - LANCE ** 2)
    : vent.bore;
