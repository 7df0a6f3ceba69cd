import { describe, expect, it } from 'vitest';
import type { Tube } from '../../server/job/tube.ts';
import { STANDARD_SIZES } from '../../server/solver/tube/catalogue.ts';
import { planTube } from '../../server/solver/tube/plan-tube.ts';

const tube = (
  outsideDiameter: number,
  wall: number,
  key: '304' | '316L' = '304',
  tolerance: Tube['tolerance'] = { by: 'standard', standard: 'iso-1127-d3-t3' },
): Tube => ({ outsideDiameter, wall, grade: { from: 'catalogue', key }, heat: '', tolerance });
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

describe('what the tolerance allows', () => {
  it('is the least and the most of diameter and wall, with its source', () => {
    const { tube: plan, tolerance } = planTube(tube(48.26, 2.77, '304', { by: 'standard', standard: 'astm-a312' }));
    expect(tolerance!.source).toBe('astm-a312');
    expect(plan!.diameterLimits!.least.value).toBeCloseTo(47.47, 9);
    expect(plan!.diameterLimits!.most!.value).toBeCloseTo(48.66, 9);
    expect(plan!.wallLimits!.least.value).toBeCloseTo(0.875 * 2.77, 9);
    expect(plan!.wallLimits!.most).toBeNull();
    expect(plan!.wallLimits!.least.working.sources).toEqual(['astm-a312']);
    // the further way: 0.79 under the diameter, 12.5 % under the wall
    expect(plan!.bore.band!.plusMinus).toBeCloseTo(Math.hypot(0.79, 2 * 0.125 * 2.77), 6);
    expect(plan!.bore.working.sources).toEqual(['geometry', 'astm-a312']);
  });

  it('is what the shop typed', () => {
    const own = { by: 'own', outsideDiameter: 0.1, wall: 0.05 } as const;
    const { tube: plan, findings } = planTube(tube(38.1, 1.65, '304', own));
    expect(findings).toEqual([]);
    expect(plan!.diameterLimits!.most!.value).toBeCloseTo(38.2, 9);
    expect(plan!.wallLimits!.least.value).toBeCloseTo(1.6, 9);
    expect(plan!.bore.band!.plusMinus).toBeCloseTo(Math.hypot(0.1, 0.1), 6);
    expect(plan!.bore.working.sources).toEqual(['geometry', 'typed']);
  });

  it('is nothing where the standard has no row, and the way out has one', () => {
    const without = tube(25.4, 4, '304', { by: 'standard', standard: 'astm-a554' });
    const { tube: plan, tolerance, findings } = planTube(without);
    expect(tolerance).toBeNull();
    expect(plan).toMatchObject({ diameterLimits: null, wallLimits: null });
    expect(plan!.bore.band).toBeNull();
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code: 'tolerance-no-row', field: '/tube/tolerance/standard' });
    const { value } = findings[0]!.wayOut!;
    const mended = { ...without, tolerance: { by: 'standard', standard: value } as Tube['tolerance'] };
    expect(codes(mended)).toEqual([]);
  });
});

it('every standard size makes a tube without a word', () => {
  for (const size of STANDARD_SIZES)
    for (const wall of size.walls) expect(codes(tube(size.outsideDiameter, wall))).toEqual([]);
});
