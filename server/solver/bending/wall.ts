import type { TubeSize } from '../tube/section.ts';

/** A tube and its bend's centreline radius [mm]. */
export type BentTube = TubeSize & { readonly radius: number };

/** Wall at the outside of the bend [mm], the safe side: t_o = t R / (R + D/2). Derived, all of the stretch in the wall. */
export const wallOutside = ({ outsideDiameter, wall, radius }: BentTube): number =>
  (wall * radius) / (radius + outsideDiameter / 2);

/** Wall at the inside of the bend [mm], the thickest it gets: t_i = t R / (R − D/2). Derived likewise. */
export const wallInside = ({ outsideDiameter, wall, radius }: BentTube): number =>
  (wall * radius) / (radius - outsideDiameter / 2);

/**
 * Wall where the stretch is shared by wall and girth [mm]: t √(R / (R ± D/2)), the other end of what is likely.
 * Derived: isotropic tube, free hoop.
 */
export const wallShared = ({ outsideDiameter, wall, radius }: BentTube, side: 'outside' | 'inside'): number =>
  wall * Math.sqrt(radius / (radius + ((side === 'outside' ? 1 : -1) * outsideDiameter) / 2));

/** Elongation of the outer fibre [–], no shift of the neutral axis: x = D / (2R). Derived. */
export const outerElongation = ({ outsideDiameter, radius }: Omit<BentTube, 'wall'>): number =>
  outsideDiameter / (2 * radius);

/**
 * Radius of the neutral axis in a bend without axial force [mm]: r_n = √(R² − r²), thin ring. Derived; the tube used
 * up in a bend is r_n θ, so a bend grows by about (R − r_n) θ. A shop's own scribed lines are better.
 */
export const neutralRadius = ({
  radius,
  tubeRadius,
}: {
  readonly radius: number;
  readonly tubeRadius: number;
}): number => Math.sqrt(radius ** 2 - tubeRadius ** 2);
