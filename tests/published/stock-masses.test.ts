// Sizes that are stocked, and their masses computed beforehand with the density of each list.
import { describe, expect, it } from 'vitest';
import { STANDARD_SIZES, type StandardSize } from '../../server/solver/tube/catalogue.ts';
import { INCH, massPerMetre } from '../../server/solver/tube/section.ts';

const named = (family: StandardSize['family'], name: string): StandardSize =>
  STANDARD_SIZES.find((size) => size.family === family && size.name === name)!;
const names = (family: StandardSize['family']) =>
  STANDARD_SIZES.filter((size) => size.family === family).map((size) => size.name);

// ISO 1127 diameters and decorative sizes at 7.97 kg/dm³: wall mm, kg/m
const METRIC: readonly (readonly [string, string])[] = [
  ['12', '1: 0.275, 1.5: 0.394'],
  ['14', '1: 0.326, 1.5: 0.469'],
  ['15', '1: 0.351, 1.5: 0.507'],
  ['16', '1: 0.376, 1.5: 0.545'],
  ['18', '1: 0.426, 1.5: 0.620'],
  ['20', '1: 0.476, 1.5: 0.695, 2: 0.901'],
  ['21.3', '1.6: 0.789, 2: 0.966, 2.6: 1.217'],
  ['22', '1: 0.526, 1.2: 0.625, 1.5: 0.770'],
  ['25', '1.2: 0.715, 1.5: 0.883, 2: 1.152'],
  ['26.9', '1.6: 1.014, 2: 1.247, 2.6: 1.582'],
  ['28', '1.2: 0.805, 1.5: 0.995'],
  ['30', '1.5: 1.070, 2: 1.402'],
  ['32', '1.5: 1.146, 2: 1.502'],
  ['33.7', '1.6: 1.286, 2: 1.587, 2.6: 2.025, 3.2: 2.444'],
  ['35', '1.5: 1.258, 2: 1.653'],
  ['38', '1.5: 1.371, 2: 1.803'],
  ['40', '1.5: 1.446, 2: 1.903'],
  ['42.4', '1.6: 1.635, 2: 2.023, 2.6: 2.591, 3.2: 3.141'],
  ['44.5', '1.5: 1.615, 2: 2.128'],
  ['48.3', '1.6: 1.871, 2: 2.319, 2.6: 2.975, 3.2: 3.614'],
  ['50', '1.5: 1.822, 2: 2.404, 3: 3.530'],
  ['54', '1.5: 1.972, 2: 2.604'],
  ['60.3', '1.6: 2.352, 2: 2.919, 2.6: 3.756, 3.2: 4.575'],
  ['63.5', '1.5: 2.329, 2: 3.080'],
  ['70', '2: 3.405'],
  ['76.1', '1.6: 2.985, 2: 3.711, 2.6: 4.785, 3.2: 5.841'],
  ['88.9', '2: 4.352, 2.6: 5.618, 3.2: 6.867'],
  ['101.6', '2: 4.988, 3: 7.406'],
  ['114.3', '2: 5.624, 2.6: 7.272, 3.2: 8.902, 3.6: 9.978'],
];

describe('metric tube at 7.97 kg/dm³', () => {
  it('has the listed diameters and no other', () => {
    expect(names('metric')).toEqual(METRIC.map(([name]) => name));
  });
  it.each(METRIC)('%s: %s', (name, printed) => {
    const { outsideDiameter, walls } = named('metric', name);
    const mass = (wall: number) => massPerMetre({ outsideDiameter, wall, density: 7970 }).toFixed(3);
    expect(walls.map((wall) => `${wall}: ${mass(wall)}`).join(', ')).toBe(printed);
  });
});

// EN 10312, series 1 and 2, seen in an excerpt: diameter × wall mm
it('EN 10312 tube has its two series', () => {
  const series1 = ['15×0.6', '18×0.7', '22×0.7', '28×0.8', '35×1', '42×1.1', '54×1.2', '76.1×1.5', '108×1.5'];
  const series2 = ['15×1', '18×1', '22×1.2', '28×1.2', '35×1.5', '42×1.5', '54×1.5', '76.1×2'];
  const sizes = STANDARD_SIZES.filter(({ family }) => family === 'press-fitting');
  expect(sizes.flatMap(({ name, walls }) => walls.map((wall) => `${name}×${wall}`)).sort()).toEqual(
    [...series1, ...series2].sort(),
  );
});

// Birmingham wire gauge as it is used for tube: gauge, in, mm
const GAUGES = [
  [18, 0.049, '1.24'],
  [16, 0.065, '1.65'],
  [14, 0.083, '2.11'],
  [11, 0.12, '3.05'],
] as const;

it.each(GAUGES)('%d gauge is %d in, %s mm', (gauge, inches, printed) => {
  const wall = named('inch', '1').walls[GAUGES.findIndex(([of]) => of === gauge)]!;
  expect(wall).toBeCloseTo(inches * INCH, 12);
  expect(wall.toFixed(2)).toBe(printed);
});

// Common inch stock at 8.00 kg/dm³: kg/m for 0.049, 0.065, 0.083, 0.120 in
describe('inch tube at 8.00 kg/dm³', () => {
  it.each([
    ['1/2', 12.7, ['0.358', '0.458', '0.561', '0.739']],
    ['5/8', 15.88, ['0.458', '0.590', '0.729', '0.983']],
    ['3/4', 19.05, ['0.557', '0.722', '0.898', '1.226']],
    ['7/8', 22.23, ['0.656', '0.854', '1.066', '1.469']],
    ['1', 25.4, ['0.756', '0.985', '1.234', '1.712']],
    ['1-1/4', 31.75, ['0.954', '1.249', '1.571', '2.199']],
    ['1-1/2', 38.1, ['1.153', '1.512', '1.907', '2.685']],
    ['1-5/8', 41.28, ['1.252', '1.644', '2.075', '2.928']],
    ['1-3/4', 44.45, ['1.351', '1.776', '2.243', '3.172']],
    ['1.900', 48.26, ['1.471', '1.934', '2.445', '3.463']],
    ['2', 50.8, ['1.550', '2.039', '2.580', '3.658']],
    ['2-1/2', 63.5, ['1.947', '2.566', '3.253', '4.631']],
    ['3', 76.2, ['2.345', '3.093', '3.926', '5.604']],
    ['3-1/2', 88.9, ['2.742', '3.620', '4.599', '6.577']],
    ['4', 101.6, ['3.139', '4.147', '5.272', '7.550']],
  ])('%s in', (name, metric, masses) => {
    const { outsideDiameter, walls } = named('inch', name);
    expect(Math.abs(outsideDiameter - metric)).toBeLessThan(0.005 + 1e-9);
    expect(walls.map((wall) => massPerMetre({ outsideDiameter, wall, density: 8000 }).toFixed(3))).toEqual(masses);
  });
});

// ASME B36.19; 2-1/2 and 3 from memory. The masses are of the exact inches: NPS, OD in and mm, walls of 5S, 10S, 40S in
// in, then for each its mm and kg/m at 7.85 (the standard's), 7.9 and 8.0 kg/dm³
describe('pipe', () => {
  it.each([
    ['1/2', 0.84, 21.34, [0.065, 0.083, 0.109], '1.65: 0.80 0.81 0.82, 2.11: 1.00 1.01 1.02, 2.77: 1.27 1.28 1.29'],
    ['3/4', 1.05, 26.67, [0.065, 0.083, 0.113], '1.65: 1.02 1.03 1.04, 2.11: 1.28 1.29 1.30, 2.87: 1.68 1.70 1.72'],
    ['1', 1.315, 33.4, [0.065, 0.109, 0.133], '1.65: 1.29 1.30 1.32, 2.77: 2.09 2.10 2.13, 3.38: 2.50 2.52 2.55'],
    ['1-1/4', 1.66, 42.16, [0.065, 0.109, 0.14], '1.65: 1.65 1.66 1.68, 2.77: 2.69 2.71 2.74, 3.56: 3.39 3.41 3.45'],
    ['1-1/2', 1.9, 48.26, [0.065, 0.109, 0.145], '1.65: 1.90 1.91 1.93, 2.77: 3.11 3.13 3.17, 3.68: 4.05 4.07 4.13'],
    ['2', 2.375, 60.33, [0.065, 0.109, 0.154], '1.65: 2.39 2.40 2.43, 2.77: 3.93 3.95 4.00, 3.91: 5.44 5.48 5.55'],
    ['2-1/2', 2.875, 73.03, [0.083, 0.12, 0.203], '2.11: 3.69 3.71 3.76, 3.05: 5.26 5.29 5.36, 5.16: 8.63 8.69 8.80'],
    ['3', 3.5, 88.9, [0.083, 0.12, 0.216], '2.11: 4.51 4.54 4.60, 3.05: 6.45 6.49 6.58, 5.49: 11.29 11.36 11.50'],
  ])('NPS %s', (name, inches, outside, wallsInch, printed) => {
    const { outsideDiameter, walls } = named('pipe', name);
    expect(outsideDiameter).toBe(outside);
    expect(Math.abs(outsideDiameter - inches * INCH)).toBeLessThan(0.005 + 1e-9);
    const masses = (wall: number) =>
      [7850, 7900, 8000].map((density) =>
        massPerMetre({ outsideDiameter: inches * INCH, wall: wall * INCH, density }).toFixed(2),
      );
    expect(walls.map((wall, index) => `${wall.toFixed(2)}: ${masses(wallsInch[index]!).join(' ')}`).join(', ')).toBe(
      printed,
    );
    expect(walls.map((wall) => wall.toFixed(2))).toEqual(wallsInch.map((wall) => (wall * INCH).toFixed(2)));
  });
  // below 1/2 in only the walls of schedule 10S were seen
  it.each([
    ['1/8', 0.405, 0.049],
    ['1/4', 0.54, 0.065],
    ['3/8', 0.675, 0.065],
  ])('NPS %s', (name, inches, wall) => {
    const size = named('pipe', name);
    expect(Math.abs(size.outsideDiameter - inches * INCH)).toBeLessThan(0.005 + 1e-9);
    expect(size.walls.map(String)).toEqual([(wall * INCH).toFixed(2)]);
  });
});
