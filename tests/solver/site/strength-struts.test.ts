import { describe, expect, it } from 'vitest';
import type { Leg } from '../../../server/job/leg.ts';
import { planStrength } from '../../../server/solver/site/strength/plan-strength.ts';
import { at, carried, TWO, type Under } from './carried-frame.ts';
import { codes, planned } from './planned-strength.ts';

describe('a leg as a strut', () => {
  it('is reckoned from its own tube, its length from foot to head, and how it is held', () => {
    const { struts } = planned().strength;
    expect(struts.map(({ leg, field }) => [leg, field])).toEqual([
      ['leg 1', '/site/legs/0'],
      ['leg 2', '/site/legs/1'],
    ]);
    const [{ factor, bucklingLength, slenderness, euler, eulerHolds, reduced }] = struts as [(typeof struts)[number]];
    // 3-4-5: 300 along, 400 up
    expect(factor.value).toBe(1);
    expect(bucklingLength.value).toBeCloseTo(500, 9);
    // i = √(25.4² + 22.1²)/4 = 8.417
    expect(slenderness.value.toFixed(1)).toBe('59.4');
    // π² × 193 000 × 8722.2/500²
    expect((euler.value / 1000).toFixed(1)).toBe('66.5');
    // 66.5 kN over 123.1 mm² is 540 MPa: it yields long before
    expect(eulerHolds).toBe(false);
    expect(reduced!.value).toBeLessThan(22_000);
    expect(reduced!.value).toBeGreaterThan(15_000);
  });

  it('says Euler holds where the leg buckles before it yields', () => {
    const long: Under = { ...TWO[0]!, foot: at(0, 300, -1500) };
    expect(planned({ legs: [long] }).strength.struts[0]!.eulerHolds).toBe(true);
  });

  it('has a band from where its foot and its head were measured', () => {
    const { bucklingLength, euler } = planned().strength.struts[0]!;
    // 2 mm along: 3/5 of it; 2 mm down: 4/5 of it
    expect(bucklingLength.band!.plusMinus).toBeCloseTo(Math.hypot(1.2, 1.6), 2);
    expect(bucklingLength.band!.from).toEqual(['site-foot', 'site-frame']);
    expect(euler.band!.plusMinus / euler.value).toBeCloseTo((2 * 2) / 500, 3);
  });

  it('shows how it is reduced, with the theoretical factor beside that for design', () => {
    const fixed: Under = { ...TWO[0]!, held: ['fixed', 'fixed'] };
    const { factor, reduced } = planned({ legs: [fixed] }).strength.struts[0]!;
    expect(factor.working.inputs.map(({ value }) => value)).toEqual([0.65, 0.5]);
    const inputs = new Map(reduced!.working.inputs.map(({ symbol, value }) => [symbol, value]));
    const [share, area, proof, safety] = ['χ', 'A', 'f', 'γ'].map((symbol) => inputs.get(symbol)!);
    expect((share! * area! * proof!) / safety!).toBeCloseTo(reduced!.value, 6);
    expect(inputs.get('λ')).toBeCloseTo(Math.sqrt((area! * proof!) / inputs.get('N_cr')!), 12);
  });

  it('carries nothing that is told where it is adjusted by a thread, and says so', () => {
    const study = carried();
    const [first, second] = study.source.site.legs as [Leg, Leg];
    const threaded: Leg = { ...first, adjust: { by: 'thread', adds: 60, travel: 15 } };
    const site = { ...study.source.site, legs: [threaded, second] };
    const { strength, findings } = planStrength({ ...study, source: { ...study.source, site } });
    expect(strength.struts.map(({ adjusted, reduced }) => [adjusted, reduced === null])).toEqual([
      ['thread', true],
      [null, false],
    ]);
    for (const { legs } of strength.loads.filter(({ load }) => load.unit === 'N'))
      expect(legs.map(({ overReduced }) => overReduced)).toEqual([null, expect.any(Boolean)]);
    expect(findings.filter(({ code }) => code === 'strut-adjusted')).toMatchObject([
      { grade: 'caution', field: '/site/legs/0/adjust', data: { name: 'leg 1' } },
    ]);
    expect(codes()).not.toContain('strut-adjusted');
  });

  it('is told as slender from 200 on', () => {
    const foot = (down: number): Under[] => [{ ...TWO[0]!, foot: at(-300, 300, -down) }];
    // 200 × 8.417 mm = 1683 mm
    expect(codes({ legs: foot(1680) })).not.toContain('leg-slender');
    const { findings } = planned({ legs: foot(1690) });
    expect(findings.find(({ code }) => code === 'leg-slender')).toMatchObject({
      grade: 'caution',
      field: '/site/legs/0',
      data: { name: 'leg 1', high: 200 },
    });
  });
});
