import type { Dimension, Reference } from '../../job/quantities.ts';

/** How many tube diameters a size over the outside is larger than the same size centre to centre. */
export type Overlap = number;

const SIDE: Readonly<Record<Reference, 1 | 0 | -1>> = { outside: 1, centre: 0, inside: -1 };

/**
 * A typed size, centre to centre [mm]. A width across two tubes differs by one diameter (`overlap` 1), a length
 * from a cut end to the far side of a tube by half of one (0.5), a length to the corner of a bend by
 * tan(θ/2) / 2 diameters.
 */
export function centreSize(dimension: Dimension, tube: { outsideDiameter: number; overlap: Overlap }): number {
  return dimension.value - SIDE[dimension.reference] * tube.overlap * tube.outsideDiameter;
}
