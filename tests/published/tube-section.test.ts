import { describe, expect, it } from 'vitest';
import { massPerMetre, sectionProperties } from '../../server/solver/tube/section.ts';

// Annulus computed beforehand, printed to 0.01 mm², 0.1 mm⁴, 0.01 mm³, 0.01 mm: D, t, A, I, W, Wp, i
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

// ASME B36.19-2022, Table 2-1, excerpt in a pipe maker's copy. Its masses fit 7.85 kg/dm³: OD in, wall in, kg/m
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

// A stockholder's table of stainless pipe, lb/ft with two digits; all of its rows fit 10.78 (D − t) t: OD in, wall in, lb/ft
const STOCK = [
  [0.84, 0.065, 0.54],
  [0.84, 0.083, 0.68],
  [0.84, 0.109, 0.86],
  [1.05, 0.065, 0.69],
  [1.05, 0.083, 0.87],
  [1.05, 0.113, 1.14],
  [1.315, 0.065, 0.88],
  [1.315, 0.109, 1.42],
  [1.315, 0.133, 1.69],
  [1.66, 0.065, 1.12],
  [1.66, 0.109, 1.82],
  [1.66, 0.14, 2.29],
  [1.9, 0.065, 1.29],
  [1.9, 0.109, 2.1],
  [1.9, 0.145, 2.74],
  [2.375, 0.065, 1.62],
  [2.375, 0.109, 2.66],
  [2.375, 0.154, 3.69],
] as const;

// ISO 1127:1992 / EN 10217-7 at 7.97 kg/dm³, from memory of the standard: D, t, kg/m as printed
const METRIC = [
  [21.3, 2, '0.966'],
  [26.9, 2, '1.25'],
  [33.7, 2, '1.59'],
  [42.4, 2, '2.02'],
  [48.3, 2, '2.32'],
  [60.3, 2, '2.92'],
  [76.1, 2, '3.71'],
  [88.9, 2, '4.35'],
  [114.3, 2, '5.62'],
] as const;

// A pressure-tube mill's weight table for 316/316L, stated 0.290 lb/in³ = 8.027 kg/dm³: OD in, wall in, kg/m
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
  it.each(STOCK)('stockholder %d × %d in', (od, wall, mass) => {
    // 10.78 lb/ft for (D − t) t in square inches is 7915 kg/m³; 1 lb/ft = 1.48816 kg/m
    const computed = massPerMetre({ outsideDiameter: od * 25.4, wall: wall * 25.4, density: 7915 }) / 1.48816;
    expect(computed.toFixed(2)).toBe(mass.toFixed(2));
  });
  it.each(METRIC)('metric %d × %d', (outsideDiameter, wall, mass) => {
    const digits = mass.split('.')[1]!.length;
    expect(massPerMetre({ outsideDiameter, wall, density: 7970 }).toFixed(digits)).toBe(mass);
  });
  it.each(SMALL_TUBE)('small tube %d × %d in', (od, wall, mass) => {
    const computed = massPerMetre({ outsideDiameter: od * 25.4, wall: wall * 25.4, density: 8027 });
    expect(Math.abs(computed - mass)).toBeLessThan(1.25e-4); // lb/ft printed to 1e-4 is 0.74e-4 kg/m, and half a digit of the kg/m
  });
});
