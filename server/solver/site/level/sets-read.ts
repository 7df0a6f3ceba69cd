import type { Level, LevelSet } from '../../../job/level.ts';

/** Whether every reading of a set is taken: one that is begun says nothing yet. */
export const isRead = ({ readings }: LevelSet): boolean =>
  readings.every((reading) => (reading.reading === 'incline' ? reading.angle : reading.height) !== null);

/** The set that says how the structure lies now, the last that is read, by its place in the list; −1 without one. */
export const setInUse = ({ sets }: Level): number => sets.findLastIndex(isRead);
