import { describe, expect, it } from 'vitest';
import type { Tube } from '../../server/job/tube.ts';
import { STANDARD_SIZES } from '../../server/solver/tube/catalogue.ts';
import { considere } from '../../server/solver/tube/grades.ts';
import { planTube } from '../../server/solver/tube/plan-tube.ts';

const tube = (outsideDiameter: number, wall: number, key: '304' | '316L' = '304'): Tube => ({
  outsideDiameter,
  wall,
  grade: { from: 'catalogue', key },
});
const codes = (of: Tube) => planTube(of).findings.map((each) => each.code);

describe('a tube', () => {
  it('with its bore, mass and what it holds', () => {
    const { tube: plan, findings } = planTube(tube(38.1, 1.65));
    expect(findings).toEqual([]);
    expect(plan!.bore.value).toBeCloseTo(34.8, 12);
    expect(plan!.massPerMetre.value).toBeCloseTo(0.0248186 * 36.45 * 1.65, 4);
    expect(plan!.litresPerMetre.value).toBeCloseTo(2.8534 / 3, 4);
    // ISO 1127 D3 is 0.30 mm here, T3 0.20 mm: d = D − 2 t
    expect(plan!.bore.band!.plusMinus).toBeCloseTo(Math.hypot(0.3, 0.4), 6);
  });

  it('whose wall leaves no bore is refused, with the wall that was meant', () => {
    const { tube: plan, findings } = planTube(tube(38.1, 20));
    expect(plan).toBeNull();
    expect(findings[0]).toMatchObject({ code: 'wall-over-half-diameter', grade: 'stop', data: { high: 19.05 } });
    expect(planTube(tube(48.3, 26)).findings[0]!.wayOut).toEqual({ field: '/tube/wall', value: 2.6 });
    expect(planTube(tube(39.4, 26)).findings[0]!.wayOut).toBeNull();
  });

  it('of an unusual wall, and of a grade whose hardening is estimated, has a note', () => {
    expect(codes(tube(100, 1))).toEqual(['wall-outside-usual']);
    expect(codes(tube(20, 6))).toEqual(['wall-outside-usual']);
    expect(codes(tube(38.1, 1.65, '316L'))).toEqual(['grade-springback-estimated']);
  });
});

it('every standard size makes a tube without a word', () => {
  for (const size of STANDARD_SIZES)
    for (const wall of size.walls) expect(codes(tube(size.outsideDiameter, wall))).toEqual([]);
});

// Typical tensile strength and uniform elongation from memory; the rule itself is exact.
it.each([
  [620, 0.5, 0.405, 1341],
  [580, 0.5, 0.405, 1255],
  [580, 0.42, 0.351, 1189],
  [600, 0.45, 0.372, 1257],
  [760, 0.2, 0.182, 1244],
])('Considère: Rm %d, Ag %d', (tensileStrength, uniformElongation, n, k) => {
  const law = considere({ tensileStrength, uniformElongation });
  expect(law.hardeningExponent).toBeCloseTo(n, 3);
  expect(law.strengthCoefficient).toBeCloseTo(k, 0);
});
