import type { Units } from '../job/job.ts';
import { closeParts } from './length-format.ts';
import { words } from './words.ts';

/** A size of tube [mm], with its grade where that tells it apart. */
type Size = { readonly outsideDiameter: number; readonly wall: number; readonly grade?: string };

/** '38.1 × 1.65 mm, 316L', '1 1/2 × 0.065 in, 316L': a size of tube as page, sheets and tables call it. */
export function sizeWords({ outsideDiameter, wall, grade = '' }: Size, units: Units): string {
  const [across, thick] = [closeParts(outsideDiameter, units), closeParts(wall, units)];
  const size = words('tube.size', { diameter: across.number, wall: thick.number, unit: thick.unit });
  return grade === '' ? size : words('tube.sizeAndGrade', { size, grade });
}
