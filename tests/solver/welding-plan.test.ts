import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { planWelding, tacksRound } from '../../server/solver/welding/plan-welding.ts';

const { tube, welding } = newJob('straight');
const plan = (joints: number, more: Partial<typeof welding> = {}) =>
  planWelding({ tube, welding: { ...welding, ...more }, joints, gap: 0, places: [] });

describe('welds', () => {
  it('are counted all together, but for the arc time of one', () => {
    const one = plan(1);
    const four = plan(4);
    for (const key of ['weldLength', 'arcTime', 'joints', 'fillerMass', 'fillerLength'] as const)
      expect(four.welding[key].value).toBeCloseTo(4 * one.welding[key].value, 9);
    expect(four.arcTimeEach).toBe(one.arcTimeEach);
    expect(one.welding.arcTime.value).toBe(one.arcTimeEach);
  });
  it('begin with 30 to 40 A for each mm of wall', () => {
    expect(plan(1).welding.currentLow.value).toBeCloseTo(49.5, 12);
    expect(plan(1).welding.currentHigh.value).toBeCloseTo(66, 12);
  });
  it('take filler by their grade, and none where none is fed', () => {
    expect(plan(1).welding.filler).toBe('ER316L (W 19 12 3 L)');
    const none = plan(2, { fillerDiameter: 0 }).welding;
    expect([none.filler, none.fillerMass.value, none.fillerLength.value]).toEqual(['', 0, 0]);
  });
  it('of a grade of the shop have a filler that is not known', () => {
    const own = {
      from: 'own' as const,
      name: 'X',
      density: 7800,
      elasticModulus: 200_000,
      strengthCoefficient: 1000,
      hardeningExponent: 0.3,
      proofStress: 200,
      elongation: 40,
    };
    expect(planWelding({ tube: { ...tube, grade: own }, welding, joints: 1, gap: 0, places: [] }).welding.filler).toBe(
      '—',
    );
  });
  it('of thick walls get a V and more metal', () => {
    const mass = (wall: number) =>
      planWelding({ tube: { ...tube, outsideDiameter: 100 + wall, wall }, welding, joints: 1, places: [], gap: 0 })
        .welding.fillerMass.value;
    expect(mass(3)).toBeCloseTo(mass(2), 9);
    expect(mass(3.1)).toBeGreaterThan(mass(3));
    expect(mass(5)).toBeGreaterThan(mass(4));
  });
});

it.each([
  [40, 3],
  [40.1, 4],
  [100, 4],
  [114.3, 6],
])('a tube of %d mm gets %d tacks', (diameter, tacks) => {
  expect(tacksRound(diameter)).toBe(tacks);
});
