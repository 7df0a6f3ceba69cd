import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Machine, TestBend } from '../../server/job/machine.ts';
import type { Tube } from '../../server/job/tube.ts';
import { planSpringback } from '../../server/solver/bending/plan-springback.ts';
import { setUpOf } from '../../server/solver/bending/set-up.ts';
import { planTube } from '../../server/solver/tube/plan-tube.ts';
import { BENDER, testBend, TUBE, withDie } from './made-up-shop.ts';

const RADIAN = Math.PI / 180;
const tube: Tube = { ...TUBE, grade: { from: 'catalogue', key: '304' } };
const machine: Machine = withDie(
  { ...BENDER, leastStraight: 60, accuracy: { ...BENDER.accuracy, angleScatter: 0.2 } },
  { radius: 76.2, gripLength: 50 },
);
const test = (commanded: number, measured: number, radius: number | null = null): TestBend =>
  testBend(commanded, measured, radius, { dieRadius: 76.2 });
const plan = (change: Partial<Machine> = {}, dieRadius = 76.2, of: Tube = tube) =>
  planSpringback(of, planTube(of).grade, setUpOf(withDie({ ...machine, ...change }, { radius: dieRadius }), of).setUp!);
const fromTests = (...bends: TestBend[]) => plan({ springback: { method: 'test-bends', bends } });
const codes = (findings: readonly { code: string }[]) => findings.map((each) => each.code);

describe('by theory', () => {
  it('says that it is an estimate, and its band reaches what shops see', () => {
    const { springback, findings } = plan();
    expect(codes(findings)).toEqual(['springback-estimate']);
    expect(springback!.method).toBe('theory');
    const { value, band } = springback!.bendTo90;
    // between the power law, 1.67, and Swift's law from a typical proof stress of 260 MPa, 1.75, both printed for 304
    expect(value).toBeGreaterThan(91.671);
    expect(value).toBeLessThan(91.75);
    expect(band!.plusMinus).toBeGreaterThan(4 - (value - 90));
    expect(band!.from).toEqual(['springback-model', 'angle-scatter']);
    // the arc keeps its length: R_f / R is what the angle gives back
    expect(springback!.radiusAfterRelease.value).toBeCloseTo((76.2 * value) / 90, 9);
  });

  it('finds the die for a radius, and back', () => {
    const { law } = plan();
    fc.assert(
      fc.property(fc.double({ min: 40, max: 20_000, noNaN: true }), (radius) => {
        expect(law!.radiusFor(law!.dieFor(radius)) / radius).toBeCloseTo(1, 7);
      }),
      { numRuns: 30 },
    );
  });

  it('does not change with the unit of length', () => {
    const small = { ...tube, outsideDiameter: tube.outsideDiameter / 1000, wall: tube.wall / 1000 };
    const scaled = plan({}, 76.2 / 1000, small);
    expect(scaled.springback!.bendTo90.value).toBeCloseTo(plan().springback!.bendTo90.value, 9);
  });
});

describe('from test bends', () => {
  it('fits two, with a band that grows away from them', () => {
    const { springback, law, findings } = fromTests(test(20, 17.9), test(120, 113.6));
    expect(findings).toEqual([]);
    expect(springback!.method).toBe('fitted');
    expect(springback!.bendTo90.value).toBeCloseTo(95.3396, 4);
    const at = (angle: number) => law!.bandFor(angle * RADIAN).plusMinus;
    expect(at(66.5)).toBeLessThan(at(113.6));
    expect(at(113.6)).toBeLessThan(at(175));
    // a fitted line is as sure at a test as the test itself, so with the bend's own scatter √2 of it
    expect(at(113.6) / RADIAN).toBeCloseTo(0.2 * Math.SQRT2, 9);
  });

  it('says that one is too few, and takes from it only the radius that was measured', () => {
    const { springback, findings, law } = fromTests(test(90, 87.3, 77.9));
    expect(codes(findings)).toEqual(['test-bends-too-few', 'springback-estimate']);
    expect(springback!.method).toBe('theory');
    expect(springback!.fit).toBeNull();
    expect(springback!.bendTo90.value).toBe(plan().springback!.bendTo90.value);
    expect(springback!.radiusAfterRelease.value).toBe(77.9);
    expect(law!.radiusMeasured).toBe(true);
  });

  it('says that several at one angle leave the line open, and computes by theory', () => {
    const { springback, findings } = fromTests(test(90, 87.3), test(90, 87.1), test(90, 87.2));
    expect(codes(findings)).toEqual(['test-bends-one-angle', 'springback-estimate']);
    expect(findings[0]!.data).toEqual({ count: 3, angle: 90 });
    expect(springback!.method).toBe('theory');
    expect(springback!.bendTo90.value).toBe(plan().springback!.bendTo90.value);
  });

  it('falls back on theory without any, and where no metal would do what was typed', () => {
    expect(codes(fromTests().findings)).toEqual(['test-bends-too-few', 'springback-estimate']);
    const opened = fromTests(test(30, 29), test(90, 92));
    expect(opened.springback!.method).toBe('theory');
    expect(codes(opened.findings)).toEqual(['test-bends-no-fit', 'springback-estimate']);
  });

  it('averages the measured radii and goes through them on the own die', () => {
    const { law } = fromTests(test(20, 17.9, 78), test(120, 113.6, 79));
    expect(law!.radiusAfterRelease).toBe(78.5);
    expect(law!.radiusPlusMinus).toBe(0.5);
    expect(law!.dieFor(78.5)).toBeCloseTo(76.2, 6);
  });

  it('gives back the wanted angle for any line', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.double({ min: 0.005, max: 0.1, noNaN: true }),
        (fixed, share) => {
          const bend = (c: number) => test(c, c - fixed - share * c);
          const { law } = fromTests(bend(20), bend(70), bend(120));
          const command = law!.commandFor(90 * RADIAN) / RADIAN;
          expect(command - fixed - share * command).toBeCloseTo(90, 9);
        },
      ),
    );
  });
});

describe('dies and grades that cannot be', () => {
  it.each([
    [19.05, 'die-radius-under-tube-radius', 'stop'],
    [57, 'die-radius-tight', 'caution'],
    [76, 'die-radius-tight', 'note'],
  ])('radius %d: %s, %s', (dieRadius, code, grade) => {
    const { findings, law } = plan({}, dieRadius);
    expect(findings[0]).toMatchObject({ code, grade, wayOut: { field: '/machine/dies/0/radius', value: 76.2 } });
    expect(law === null).toBe(grade === 'stop');
  });

  it('an own grade that never yields', () => {
    const rubber = {
      from: 'own',
      name: 'x',
      density: 7900,
      elasticModulus: 10_000,
      strengthCoefficient: 5000,
      hardeningExponent: 0,
      proofStress: 200,
      elongation: 40,
    } as const;
    const { law, findings } = plan({}, 76.2, { ...tube, grade: rubber });
    expect(law).toBeNull();
    expect(findings.at(-1)).toMatchObject({ code: 'springback-too-large', grade: 'stop', field: '/tube/grade' });
  });
});
