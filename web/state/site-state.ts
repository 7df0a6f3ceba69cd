import type { Site } from '../../server/job/site.ts';

/** Whether nothing of a site was typed yet. */
export const isSiteEmpty = ({ level, points, things, directions, standing, legs, load }: Site): boolean =>
  [level.sets, points, things, directions, standing.slopes, legs].every((list) => list.length === 0) &&
  standing.hinge === null &&
  standing.height === null &&
  standing.swing === null &&
  load === null;
