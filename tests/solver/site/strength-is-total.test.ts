import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { StrengthPlan } from '../../../server/plan/strength.ts';
import { planStrength } from '../../../server/solver/site/strength/plan-strength.ts';
import { faultsOf } from '../figures-in.ts';
import { carried, type Under } from './carried-frame.ts';
import { planned, stepForce } from './planned-strength.ts';

const schema = Compile(StrengthPlan);

describe('strength, whatever the site', () => {
  it('is a plan of its schema with finite figures, sources and formulas that speak of their inputs', () => {
    const coordinate = fc.oneof(
      fc.double({ min: -50_000, max: 50_000, noNaN: true }),
      fc.constantFrom(0, 1e-3, 300, -300, -400),
    );
    const leg = fc.record({
      member: fc.constantFrom('port arm', 'starboard arm', 'nobody'),
      station: fc.constantFrom(0, 100, 300, 499.9999, 500),
      foot: fc.record({ x: coordinate, y: coordinate, z: coordinate }),
      held: fc.tuple(fc.constantFrom('pinned', 'fixed'), fc.constantFrom('pinned', 'fixed')),
    });
    fc.assert(
      fc.property(
        fc.array(leg, { maxLength: 8 }),
        fc.boolean(),
        fc.constantFrom<number | null>(null, 1, 1e6),
        fc.constantFrom([0.001, 50], [25.4, 1.65], [500, 0.001], [40, 20], [0.002, 0.001]),
        (legs, hinged, load, [outsideDiameter = 1, wall = 1]) => {
          const made = { legs: legs as Under[], hinged, load, tube: { outsideDiameter, wall } };
          const { strength, findings } = planned(made);
          expect(schema.Check(strength)).toBe(true);
          expect(faultsOf(strength)).toEqual([]);
          for (const { data } of findings)
            for (const value of Object.values(data))
              if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
          expect(planned(made)).toEqual({ strength, findings });
        },
      ),
      { numRuns: 100 },
    );
  });

  it.each([1e-3, 1e3])('%d times as large under as large loads, forces in legs stay', (times) => {
    expect(stepForce({ times: Math.max(0.01, times) }).value).toBeCloseTo((1500 * 700) / 240, 6);
  });

  it('has nothing to tell of a frame that does not stand', () => {
    const study = carried();
    const nowhere = { ...study.laid, frame: null, legs: study.laid.legs.map(() => null) };
    const { strength, findings } = planStrength({ ...study, laid: nowhere, varied: [] });
    expect(strength).toMatchObject({ struts: [], spans: [] });
    expect(strength.loads.map(({ legs }) => legs)).toEqual([[], [], [], [], [], []]);
    expect(findings).toEqual([]);
  });
});
