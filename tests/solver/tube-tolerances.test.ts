import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../server/solver/sources.ts';
import { STANDARD_SIZES } from '../../server/solver/tube/catalogue.ts';
import { INCH } from '../../server/solver/tube/section.ts';
import { tubeTolerance, type ToleranceStandard } from '../../server/solver/tube/tolerances.ts';

const inches = (standard: ToleranceStandard, outside: number, wall: number) =>
  tubeTolerance(standard, { outsideDiameter: outside * INCH, wall: wall * INCH });

describe('no row, no answer', () => {
  it.each([
    ['astm-a554', 0.4, 0.05], // under 1/2 in there is nothing above 0.049
    ['astm-a554', 0.4, 0.019],
    ['astm-a554', 1, 0.135],
    ['astm-a554', 1, 0.019],
    ['astm-a554', 1.25, 0.024],
    ['astm-a554', 1.5, 0.135],
    ['astm-a554', 2, 0.15],
    ['astm-a554', 2.5, 0.031],
    ['astm-a554', 2.5, 0.166],
    ['astm-a554', 3, 0.166],
    ['astm-a554', 4, 0.034],
    ['astm-a554', 5.01, 0.12],
    ['astm-a269', 5.5, 0.12],
    ['astm-a249', 4.01, 0.12],
    ['astm-a312', 0.405, 0.049], // 10.29 mm, below the first row that was seen
    ['astm-a312', 4.51, 0.12],
  ] as const)('%s at %d × %d in', (standard, outside, wall) => {
    expect(inches(standard, outside, wall)).toBeUndefined();
  });
});

describe('a size as it is printed in millimetres', () => {
  it.each([
    ['1.65 is 0.065 in', 25.4, 1.65, 0.005],
    ['2.11 is 0.083 in', 50.8, 2.11, 0.011],
    ['2.77 is 0.109 in', 63.5, 2.77, 0.013],
    ['4.19 is 0.165 in', 63.5, 4.19, 0.014],
    ['22.23 is 7/8 in', 22.23, 1.65, 0.005],
  ])('%s', (_, outsideDiameter, wall, plusMinus) => {
    const allowed = tubeTolerance('astm-a554', { outsideDiameter, wall })!;
    expect(allowed.outsideDiameter.plus / INCH).toBeCloseTo(plusMinus, 12);
  });
  it('a wall of a gauge more is the next row', () => {
    expect(tubeTolerance('astm-a554', { outsideDiameter: 25.4, wall: 1.7 })!.outsideDiameter.plus).toBeCloseTo(
      0.254,
      9,
    );
  });
});

describe('own limits', () => {
  const size = { outsideDiameter: 38.1, wall: 1.65 };
  it('are what was typed', () => {
    expect(tubeTolerance('own', size, { outsideDiameter: 0.2, wall: 0.1 })).toEqual({
      outsideDiameter: { plus: 0.2, minus: 0.2 },
      wall: { plus: 0.1, minus: 0.1 },
      ovality: null,
      source: 'typed',
    });
  });
  it('are nothing when nothing was typed', () => expect(tubeTolerance('own', size)).toBeUndefined());
});

describe('the catalogue', () => {
  it('has a source for every size', () => {
    for (const size of STANDARD_SIZES) expect(SOURCES).toHaveProperty(size.source);
  });
  it('has a row for every size in the standard that its family is bought to, but for one', () => {
    const without = STANDARD_SIZES.flatMap(({ family, name, outsideDiameter, walls, tolerance }) =>
      walls
        .filter((wall) => tolerance !== null && tubeTolerance(tolerance, { outsideDiameter, wall }) === undefined)
        .map((wall) => `${family} ${name} × ${wall}`),
    );
    expect(without).toEqual(['pipe 1/8 × 1.24']);
  });
  it('knows what is in no standard, and what is from memory', () => {
    const of = (source: string) => STANDARD_SIZES.filter((size) => size.source === source).map((size) => size.name);
    expect(of('asme-b36-19-memory')).toEqual(['2-1/2', '3']);
    expect(of('tube-stock').slice(0, 3)).toEqual(['15', '28', '50']);
    expect(STANDARD_SIZES.filter((size) => size.tolerance === null).every((s) => s.family === 'press-fitting')).toBe(
      true,
    );
  });
});
