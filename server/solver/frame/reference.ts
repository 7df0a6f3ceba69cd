import type { Dimension } from '../../job/quantities.ts';

/** How many tube diameters a size over the outside is larger than the same size centre to centre. */
export type Overlap = 0 | 0.5 | 1;

/**
 * A typed size, centre to centre [mm]. A width across two tubes differs by one diameter (`overlap` 1), a length
 * from a cut end to the far side of a tube by half of one (0.5).
 */
export function centreSize(dimension: Dimension, tube: { outsideDiameter: number; overlap: Overlap }): number {
  const extra = tube.overlap * tube.outsideDiameter;
  if (dimension.reference === 'outside') return dimension.value - extra;
  if (dimension.reference === 'inside') return dimension.value + extra;
  return dimension.value;
}
