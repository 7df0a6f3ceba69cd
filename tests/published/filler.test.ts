/** Filler by base grade: AWS A5.9 and EN ISO 14343-A, pairing as filler makers reprint it. Its diameter: common practice. */
import { describe, expect, it } from 'vitest';
import type { CatalogueGradeKey } from '../../server/job/tube.ts';
import { fillerDiameterFor, fillerFor } from '../../server/solver/welding/filler.ts';
import { ownGrade } from '../solver/welding-frames.ts';

describe('designation', () => {
  it.each<[CatalogueGradeKey, string, string]>([
    ['304', 'ER308L', 'W 19 9 L'],
    ['304L', 'ER308L', 'W 19 9 L'],
    ['316', 'ER316L', 'W 19 12 3 L'],
    ['316L', 'ER316L', 'W 19 12 3 L'],
    ['321', 'ER347', 'W 19 9 Nb'],
    ['2205', 'ER2209', 'W 22 9 3 N L'],
  ])('%s: %s, %s', (key, aws, iso) => {
    expect(fillerFor({ from: 'catalogue', key })).toBe(`${aws} (${iso})`);
  });
  it('of a grade of the shop is not known', () => {
    expect(fillerFor(ownGrade)).toBe('');
  });
});

describe('diameter', () => {
  it.each([
    [0.8, 1.2],
    [1.2, 1.2],
    [1.21, 1.6],
    [1.5, 1.6],
    [3, 1.6],
    [3.2, 2.4],
  ])('%d mm of wall: %d mm', (wall, diameter) => {
    expect(fillerDiameterFor(wall)).toBe(diameter);
  });
  it('is the tables’ own where they agree with practice; two thin rows of one and 2.4 and 3 mm of the others do not', () => {
    const handbook = [
      [0.8, 1.6],
      [1, 1.6],
      [1.5, 1.6],
      [2.4, 2.4],
      [3.2, 2.4],
    ] as const;
    const maker = [
      [1, 1.2],
      [1.5, 1.6],
      [2.5, 1.6],
      [3, 2.4],
    ] as const;
    const off = [...handbook, ...maker].filter(([wall, diameter]) => fillerDiameterFor(wall) !== diameter);
    expect(off).toEqual([
      [0.8, 1.6],
      [1, 1.6],
      [2.4, 2.4],
      [3, 2.4],
    ]);
  });
});
