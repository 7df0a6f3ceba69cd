import type { TubeSize } from '../tube/section.ts';

/** A tube and its bend's centreline radius [mm]. */
export type BentTube = TubeSize & { readonly radius: number };

/** Plane-strain wall at the outside of the bend [mm], the safe side. Handbook 1, 6.1: t_o = t R/(R + D/2). */
export const wallOutside = ({ outsideDiameter, wall, radius }: BentTube): number =>
  (wall * radius) / (radius + outsideDiameter / 2);

/** Plane-strain wall at the inside of the bend [mm]. Handbook 1, 6.1: t_i = t R/(R − D/2). */
export const wallInside = ({ outsideDiameter, wall, radius }: BentTube): number =>
  (wall * radius) / (radius - outsideDiameter / 2);

/** Outer fibre elongation [–], no shift of the neutral axis. Handbook 1, 6.1: x = D/(2R). */
export const outerElongation = ({ outsideDiameter, radius }: Omit<BentTube, 'wall'>): number =>
  outsideDiameter / (2 * radius);
