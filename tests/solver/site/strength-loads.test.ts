import { describe, expect, it } from 'vitest';
import { planStrength } from '../../../server/solver/site/strength/plan-strength.ts';
import { describeFinding } from '../../../server/language/finding-words.ts';
import { formulaValue } from '../formula-value.ts';
import { at, carried, TWO, type Under } from './carried-frame.ts';
import { codes, planned, stepForce } from './planned-strength.ts';

describe('loads', () => {
  it('are the published ones as they are printed, and one of one’s own', () => {
    const list = planned({ load: 2000 }).strength.loads;
    expect(list.map(({ key, load }) => [key, load.value, load.working.sources])).toEqual([
      ['rail-vessel', 890, ['cfr-46-177']],
      ['rail-vessel-along', 730, ['cfr-46-177']],
      ['guardrail', 890, ['cfr-29-1910']],
      ['midrail', 667, ['cfr-29-1910']],
      ['boarding-step', 1500, ['en-1502']],
      ['boarding-rail', 300, ['en-1502']],
      ['own', 2000, ['typed']],
    ]);
    expect(planned().strength.loads).toHaveLength(6);
    for (const span of planned({ load: 2000 }).strength.spans)
      expect(span.loads.map(({ key }) => key)).toEqual(list.map(({ key }) => key));
  });

  it('press one leg by their lever over its own', () => {
    const [vessel] = planned().strength.loads;
    const step = stepForce();
    // the leg's line passes 240 from the hinge: 300 × 400/500. The hook's top is √(700² + 400²) away, 700 as seen from above
    expect(vessel!.legs.map(({ leg }) => leg)).toEqual(['leg 1', 'leg 2']);
    expect(vessel!.legs[0]!.force.value).toBeCloseTo((890 * Math.hypot(700, 400)) / 240, 6);
    expect(step.value).toBeCloseTo((1500 * 700) / 240, 6);
    expect(step.band!.plusMinus).toBeGreaterThan(1);
  });

  it('hang down along the plumb line as the structure lies now', () => {
    const turn = 0.1;
    const step = stepForce({ up: at(Math.sin(turn), 0, Math.cos(turn)) });
    // the hook leans away: the level distance of each of its ends from the hinge
    const level = Math.max(...[100, 400].map((z) => 700 * Math.cos(turn) + z * Math.sin(turn)));
    expect(step.value).toBeCloseTo((1500 * level) / 240, 6);
  });

  it('say nothing of legs without a hinge, nor of one that points at it', () => {
    for (const { legs } of planned({ hinged: false }).strength.loads) expect(legs).toEqual([]);
    const pointing: Under = { ...TWO[0]!, foot: at(100, 300, 0) };
    for (const { legs } of planned({ legs: [pointing] }).strength.loads) expect(legs).toEqual([]);
  });

  it('tell legs of one name apart by their fields', () => {
    const study = carried({ tube: { outsideDiameter: 10, wall: 1 } });
    const legs = study.laid.legs.map((leg) => leg && { ...leg, name: 'leg' });
    // the first is twice as strong to look at: it points the other way about the hinge with a longer lever
    const near = { ...legs[0]!, foot: at(-300, 300, -400) };
    const { strength, findings } = planStrength({ ...study, laid: { ...study.laid, legs: [near, legs[1]!] } });
    for (const { legs: pressed, load } of strength.loads)
      expect(pressed.map(({ leg, field }) => [leg, field])).toEqual(
        load.unit === 'N'
          ? [
              ['leg', '/site/legs/0'],
              ['leg', '/site/legs/1'],
            ]
          : [],
      );
    const [reach, reduced] = [Math.hypot(700, 400), strength.struts.map((strut) => strut.reduced!.value)];
    const over = findings.filter(({ code }) => code === 'strut-over-load');
    expect(over.map(({ field, data }) => [field, data['value'], data['high']])).toEqual([
      ['/site/legs/0', expect.closeTo((890 * reach) / 300, 6), reduced[0]],
      ['/site/legs/1', expect.closeTo((667 * reach) / 240, 6), reduced[1]],
    ]);
  });

  it('along a rail bend a straight by half its length a metre, and press no leg', () => {
    const { strength } = planned();
    const [index] = strength.loads.flatMap(({ key }, one) => (key === 'rail-vessel-along' ? [one] : []));
    expect(strength.loads[index!]!.legs).toEqual([]);
    const bar = strength.spans.find(({ member }) => member === 'bar')!;
    const { stress, sag } = bar.loads[index!]!;
    // 600 mm of 730 N/m: 438 N × 600/8 over 686.8 mm³
    expect(stress.value.toFixed(2)).toBe((32_850 / 686.786).toFixed(2));
    expect(stress.value).toBeCloseTo(formulaValue(stress)!, 9);
    expect(sag.value / stress.value).toBeCloseTo((5 * 600 ** 2) / (48 * 193_000 * 12.7), 9);
  });

  it('overload a leg once, by the smallest that does', () => {
    // 10 × 1, 500 long: 300 N at 806 over 240 press with 1008 N, 667 N with 2240; it carries about 1500
    const thin = planned({ tube: { outsideDiameter: 10, wall: 1 } });
    const over = thin.findings.filter(({ code }) => code === 'strut-over-load');
    expect(over.map(({ field, data }) => [field, data['load']])).toEqual([
      ['/site/legs/0', 'midrail'],
      ['/site/legs/1', 'midrail'],
    ]);
    const { value, high } = over[0]!.data as { value: number; high: number };
    expect(value).toBeGreaterThan(high);
    expect(describeFinding(over[0]!, { length: 'mm', fraction: 16 })).toContain(
      'could press this leg (leg 1) with more',
    );
    // 25.4 × 1.65 carry all of them
    expect(codes()).not.toContain('strut-over-load');
  });
});
