import type { Site } from '../../job/site.ts';

/** Whether anything of the site was typed that a plan can tell something from. */
export const isTyped = ({ level, points, things, directions, standing, legs, load }: Site): boolean =>
  [level.sets, points, things, directions, standing.slopes, legs].some((list) => list.length > 0) ||
  standing.hinge !== null ||
  standing.height !== null ||
  standing.swing !== null ||
  load !== null;
