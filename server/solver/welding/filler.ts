import type { CatalogueGradeKey, Grade } from '../../job/tube.ts';

/** Filler by base grade, AWS A5.9 and EN ISO 14343-A; pairing as reprinted by filler makers. */
const FILLERS: Readonly<Record<CatalogueGradeKey, string>> = {
  '304': 'ER308L (W 19 9 L)',
  '304L': 'ER308L (W 19 9 L)',
  '316': 'ER316L (W 19 12 3 L)',
  '316L': 'ER316L (W 19 12 3 L)',
  '321': 'ER347 (W 19 9 Nb)',
  '2205': 'ER2209 (W 22 9 3 N L)',
};

/** Filler that goes with a grade; empty for a grade of the shop's own, whose filler is not known here. */
export const fillerFor = (grade: Grade): string => (grade.from === 'catalogue' ? FILLERS[grade.key] : '');

/** Diameter of the rod by wall [mm]: 1.0 to 1.2 up to 1.2, 1.6 up to 3, 2.4 over; common practice, no source. */
export function fillerDiameterFor(wall: number): number {
  if (wall <= 1.2) return 1.2;
  return wall <= 3 ? 1.6 : 2.4;
}

/** A duplex grade: welded with filler, so that enough austenite forms; EN 1011-3, from memory. */
export const isDuplex = (grade: Grade): boolean => grade.from === 'catalogue' && grade.key === '2205';
