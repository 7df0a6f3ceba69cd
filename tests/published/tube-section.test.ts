import { describe, expect, it } from 'vitest';
import { massPerMetre, sectionProperties } from '../../server/solver/tube/section.ts';

// Handbook 1, 1.2: D, t, A, I, W, Wp, i
const SECTIONS = [
  [12, 1, 34.56, 527.0, 87.83, 121.33, 3.91],
  [21.3, 2, 121.27, 5706.9, 535.86, 747.65, 6.86],
  [25.4, 1.65, 123.11, 8722.2, 686.79, 932.2, 8.42],
  [33.7, 2, 199.18, 25118.5, 1490.71, 2012.45, 11.23],
  [38.1, 1.65, 188.94, 31443.1, 1650.56, 2193.69, 12.9],
  [42.4, 2, 253.84, 51915.5, 2448.84, 3266.99, 14.3],
  [48.3, 2, 290.91, 78098.5, 3233.89, 4290.05, 16.38],
  [60.3, 2, 366.31, 155814.0, 5167.96, 6800.45, 20.62],
  [76.1, 2, 465.58, 319787.0, 8404.39, 10984.29, 26.21],
  [88.9, 3.05, 822.6, 758801.9, 17070.91, 22488.64, 30.37],
  [101.6, 2, 625.81, 776323.9, 15281.97, 19842.99, 35.22],
  [114.3, 3, 1048.98, 1625481.6, 28442.37, 37172.07, 39.36],
] as const;

// Handbook 1, 1.3 (a), ASME B36.19-2022 Table 2-1: OD in, wall in, kg/m at 7.85
const PIPE = [
  [0.405, 0.049, 0.28],
  [0.54, 0.065, 0.49],
  [0.675, 0.065, 0.63],
  [0.84, 0.065, 0.8],
  [0.84, 0.083, 1.0],
  [0.84, 0.109, 1.27],
  [1.05, 0.065, 1.02],
  [1.05, 0.083, 1.28],
  [1.05, 0.113, 1.68],
] as const;

// Handbook 1, 1.3 (c), 316/316L small tube: OD in, wall in, kg/m at 8.027
const SMALL_TUBE = [
  [0.25, 0.035, 0.1225],
  [0.5, 0.065, 0.46],
  [0.25, 0.065, 0.1957],
  [0.5, 0.083, 0.5631],
  [0.375, 0.049, 0.2598],
  [0.625, 0.065, 0.5923],
  [0.375, 0.065, 0.3278],
  [0.75, 0.065, 0.7244],
  [0.5, 0.049, 0.3595],
  [0.75, 0.083, 0.9008],
] as const;

describe('section of a tube', () => {
  it.each(SECTIONS)('%d × %d', (outsideDiameter, wall, area, secondMoment, elastic, plastic, gyration) => {
    const section = sectionProperties({ outsideDiameter, wall });
    expect(section.area).toBeCloseTo(area, 2);
    expect(section.secondMoment).toBeCloseTo(secondMoment, 1);
    expect(section.elasticModulus).toBeCloseTo(elastic, 2);
    expect(section.plasticModulus).toBeCloseTo(plastic, 2);
    expect(section.radiusOfGyration).toBeCloseTo(gyration, 2);
  });
});

describe('mass per metre', () => {
  it.each(PIPE)('pipe %d × %d in', (od, wall, mass) => {
    expect(massPerMetre({ outsideDiameter: od * 25.4, wall: wall * 25.4, density: 7850 })).toBeCloseTo(mass, 2);
  });
  it.each(SMALL_TUBE)('small tube %d × %d in', (od, wall, mass) => {
    const computed = massPerMetre({ outsideDiameter: od * 25.4, wall: wall * 25.4, density: 8027 });
    expect(Math.abs(computed - mass)).toBeLessThan(1.25e-4); // lb/ft printed to 1e-4 is 0.74e-4 kg/m, and half a digit of the kg/m
  });
});
