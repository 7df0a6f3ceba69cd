// ISO 1127 tolerance classes; two secondary copies agree. The larger of share and least value applies.
import { describe, expect, it } from 'vitest';
import { isoTolerance } from '../../server/solver/tube/tolerances.ts';
import { DIAMETER_CLASSES, WALL_CLASSES } from '../../server/solver/tube/tube-tolerances.ts';

it('has the printed classes', () => {
  const percent = (classes: Record<string, { share: number; least: number }>) =>
    Object.entries(classes).map(([name, { share, least }]) => [name, Number((100 * share).toFixed(6)), least]);
  expect(percent(DIAMETER_CLASSES)).toEqual([
    ['D1', 1.5, 0.75],
    ['D2', 1, 0.5],
    ['D3', 0.75, 0.3],
    ['D4', 0.5, 0.1],
  ]);
  expect(percent(WALL_CLASSES)).toEqual([
    ['T1', 15, 0.6],
    ['T2', 12.5, 0.4],
    ['T3', 10, 0.2],
    ['T4', 7.5, 0.15],
  ]);
});

// The size at which the share takes over from the least value, and what it is on both sides of it
describe.each([
  ['iso-1127-d2-t3', 50, 0.5, 0.01, 2, 0.2, 0.1],
  ['iso-1127-d3-t3', 40, 0.3, 0.0075, 2, 0.2, 0.1],
  ['iso-1127-d4-t3', 20, 0.1, 0.005, 2, 0.2, 0.1],
  ['iso-1127-d4-t4', 20, 0.1, 0.005, 2, 0.15, 0.075],
] as const)('%s', (standard, turn, leastDiameter, share, wallTurn, leastWall, wallShare) => {
  it.each([0.5, 0.999, 1, 1.001, 2])('at %d times the size where both are equal', (times) => {
    const size = { outsideDiameter: turn * times, wall: wallTurn * times };
    const { outsideDiameter, wall, ovality } = isoTolerance(standard, size);
    const diameter = times <= 1 ? leastDiameter : share * turn * times;
    expect(outsideDiameter.plus).toBeCloseTo(diameter, 12);
    expect(outsideDiameter.minus).toBeCloseTo(diameter, 12);
    expect(wall.plus).toBeCloseTo(times <= 1 ? leastWall : wallShare * wallTurn * times, 12);
    expect(wall.minus).toBe(wall.plus);
    // out of round is contained in the tolerance of the diameter
    expect(ovality).toBeCloseTo(2 * diameter, 12);
  });
});
