import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buttLength, padLength, saddleLength, type Seat } from '../../server/solver/welding/weld-length.ts';

const TUBE = { outsideDiameter: 38.1, wall: 1.65 };
const square: Seat = { axisAngle: Math.PI / 2, offset: 0 };

/** The same curve without the saddle's own formula: points of the branch's generators at R from the main's axis, by halving. */
function byForce({ axisAngle, offset }: Seat, { outsideDiameter, wall }: typeof TUBE, points: number): number {
  const radius = (outsideDiameter - wall) / 2;
  const main = { x: Math.sin(axisAngle), z: Math.cos(axisAngle) };
  const from = (x: number, y: number, z: number): number => {
    const along = x * main.x + z * main.z;
    return Math.hypot(x - along * main.x, y + offset, z - along * main.z);
  };
  const at = (index: number) => {
    const angle = (2 * Math.PI * index) / points;
    const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    // nearest to the main's axis at its foot; from there outwards the distance grows
    let near = (x * Math.cos(axisAngle)) / Math.sin(axisAngle);
    let far = near + outsideDiameter / Math.sin(axisAngle);
    for (let step = 0; step < 60; step += 1) {
      const middle = (near + far) / 2;
      if (from(x, y, middle) < outsideDiameter / 2) near = middle;
      else far = middle;
    }
    return { x, y, z: near };
  };
  let length = 0;
  let before = at(0);
  for (let index = 1; index <= points; index += 1) {
    const here = at(index);
    length += Math.hypot(here.x - before.x, here.y - before.y, here.z - before.z);
    before = here;
  }
  return length;
}

describe('a saddle', () => {
  it('of two equal cylinders at a right angle is an ellipse of R and √2 R: 4√2 E(1/2) R', () => {
    // E of parameter 1/2, Abramowitz and Stegun, table 17.2
    const ellipse = 4 * Math.SQRT2 * 1.3506438810476755 * 19.05;
    const thin = { outsideDiameter: 38.1, wall: 1e-9 };
    expect(saddleLength(square, thin, 20_000)).toBeCloseTo(ellipse, 3);
    expect(Math.abs(saddleLength(square, thin) / ellipse - 1)).toBeLessThan(1e-3);
  });

  it('is what points found by halving say, at any angle and offset, to 0.1 %', () => {
    const angle = fc.double({ min: (15 * Math.PI) / 180, max: Math.PI / 2, noNaN: true });
    const wall = fc.double({ min: 0.5, max: 10, noNaN: true });
    fc.assert(
      fc.property(angle, wall, fc.double({ min: 0, max: 1, noNaN: true }), (axisAngle, thick, share) => {
        const tube = { ...TUBE, wall: thick };
        // as far to the side as every generator still meets the main
        const seat = { axisAngle, offset: (share * thick) / 2 };
        expect(Math.abs(saddleLength(seat, tube) / byForce(seat, tube, 2000) - 1)).toBeLessThan(1e-3);
      }),
      { numRuns: 60 },
    );
  });

  it('scales with the tube', () => {
    for (const axisAngle of [0.5, 1, Math.PI / 2])
      expect(saddleLength({ axisAngle, offset: 2 }, { outsideDiameter: 381, wall: 16.5 })).toBeCloseTo(
        10 * saddleLength({ axisAngle, offset: 0.2 }, TUBE),
        8,
      );
  });

  it('is longer the flatter it lies, and always longer than the ring of its wall', () => {
    const lengths = [90, 75, 60, 45, 30, 20].map((degrees) =>
      saddleLength({ axisAngle: (degrees * Math.PI) / 180, offset: 0 }, TUBE),
    );
    expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
    expect(lengths[0]).toBeGreaterThan(buttLength(TUBE));
  });

  it('has a length where the branch stands beside the main or along it', () => {
    for (const seat of [
      { axisAngle: 0, offset: 0 },
      { axisAngle: 0, offset: 19 },
      { axisAngle: 1, offset: 38 },
      { axisAngle: Math.PI / 2, offset: 500 },
    ])
      expect(saddleLength(seat, TUBE)).toBeGreaterThan(buttLength(TUBE) * 0.99);
  });
});

it('a butt goes round the middle of the wall, a fillet round the outside', () => {
  expect(buttLength(TUBE).toFixed(1)).toBe('114.5');
  expect(padLength(TUBE).toFixed(1)).toBe('119.7');
});
