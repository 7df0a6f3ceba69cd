// Mass of a tube as different tables have it: every table rests on a density of its own, and each row is computed with
// the density of its table.
import { describe, expect, it } from 'vitest';
import { INCH, massPerMetre } from '../../server/solver/tube/section.ts';

const digits = (printed: string): number => printed.split('.')[1]!.length;

/** One pound a foot [kg/m]: 0.45359237 kg in 0.3048 m, by definition. */
const POUND_PER_FOOT = 0.45359237 / 0.3048;
const poundsPerFoot = (outside: number, wall: number, density: number): number =>
  massPerMetre({ outsideDiameter: outside * INCH, wall: wall * INCH, density }) / POUND_PER_FOOT;

/** 0.290 lb/in³ [kg/m³], as US mills state it for 316. */
const US_316 = (0.29 * 0.45359237) / (INCH / 1000) ** 3;

// Computed beforehand: density kg/dm³, kg/m for (D − t) t = 1 mm², lb/ft for 1 in²
it.each([
  [7.8, '0.0245044', '10.6233'],
  [7.85, '0.0246615', '10.6914'],
  [7.9, '0.0248186', '10.7595'],
  [7.93, '0.0249128', '10.8004'],
  [7.97, '0.0250385', '10.8549'],
  [7.98, '0.0250699', '10.8685'],
  [8.0, '0.0251327', '10.8957'],
  [US_316 / 1000, '0.025218', '10.9327'],
])('factors of %d kg/dm³', (density, metric, inch) => {
  expect(massPerMetre({ outsideDiameter: 2, wall: 1, density: density * 1000 }).toFixed(digits(metric))).toBe(metric);
  expect(poundsPerFoot(2, 1, density * 1000).toFixed(4)).toBe(inch);
});

// ASME B36.19-2022, Table 2-1, excerpt in a pipe maker's copy; fits 7.85 kg/dm³: OD and wall in in and mm, lb/ft
describe('ASME B36.19', () => {
  it.each([
    [0.405, '10.29', 0.049, '1.24', 0.19],
    [0.54, '13.72', 0.065, '1.65', 0.33],
    [0.675, '17.14', 0.065, '1.65', 0.42],
    [0.84, '21.34', 0.065, '1.65', 0.54],
    [0.84, '21.34', 0.083, '2.11', 0.67],
    [0.84, '21.34', 0.109, '2.77', 0.85],
    [1.05, '26.67', 0.065, '1.65', 0.68],
    [1.05, '26.67', 0.083, '2.11', 0.86],
    [1.05, '26.67', 0.113, '2.87', 1.13],
  ])('%d in (%s mm) × %d in (%s mm)', (outside, outsideMetric, wall, wallMetric, mass) => {
    expect(poundsPerFoot(outside, wall, 7850)).toBeCloseTo(mass, 2);
    // 17.145 is printed 17.14
    expect(Math.abs(outside * INCH - Number(outsideMetric))).toBeLessThan(0.005 + 1e-9);
    expect((wall * INCH).toFixed(2)).toBe(wallMetric);
  });
});

// A pressure-tube mill's table for 316/316L, stated 0.290 lb/in³ = 8.027 kg/dm³: OD in, wall in, lb/ft
describe('0.290 lb/in³', () => {
  it('is 8.027 kg/dm³', () => expect((US_316 / 1000).toFixed(3)).toBe('8.027'));
  it.each([
    [0.25, 0.035, 0.0823],
    [0.25, 0.065, 0.1315],
    [0.375, 0.049, 0.1746],
    [0.375, 0.065, 0.2203],
    [0.5, 0.049, 0.2416],
    [0.5, 0.065, 0.3091],
    [0.5, 0.083, 0.3784],
    [0.625, 0.065, 0.398],
    [0.75, 0.065, 0.4868],
  ])('%d × %d', (outside, wall, mass) => {
    expect(poundsPerFoot(outside, wall, US_316).toFixed(4)).toBe(mass.toFixed(4));
  });
  it('0.75 × 0.083, where the table is one up in its last digit', () => {
    expect(Math.abs(poundsPerFoot(0.75, 0.083, US_316) - 0.6053)).toBeLessThan(1e-4);
  });
});

// Lists of ornamental tube to ASTM A554 that print the mass of carbon steel: OD in, wall in, lb/ft
describe('a list to be warned of', () => {
  it.each([
    [1, 0.065, 0.649],
    [1.5, 0.065, 0.996],
    [2, 0.065, 1.343],
    [1.75, 0.12, 2.09],
  ])('%d × %d fits 7.85 kg/dm³, and no stainless grade', (outside, wall, mass) => {
    expect(Math.abs(poundsPerFoot(outside, wall, 7850) - mass)).toBeLessThan(0.002);
    expect(poundsPerFoot(outside, wall, 7900) - mass).toBeGreaterThan(0.002);
  });
});
