import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { describeFinding } from '../../../server/language/finding-words.ts';
import { StrengthPlan } from '../../../server/plan/strength.ts';
import { freeToSway } from '../../../server/solver/site/strength/free-to-sway.ts';
import { planStrength } from '../../../server/solver/site/strength/plan-strength.ts';
import { faultsOf } from '../figures-in.ts';
import { at, carried, TWO, type Made, type Under } from './carried-frame.ts';

const schema = Compile(StrengthPlan);
const planned = (made: Made = {}) => planStrength(carried(made));
const codes = (made: Made = {}) => planned(made).findings.map(({ code }) => code);

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
    expect(bucklingLength.band!.from).toEqual(['site-point', 'site-frame']);
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

describe('a head that can go sideways', () => {
  const fixed = (legs: readonly Under[]): Under[] => legs.map((leg) => ({ ...leg, held: ['fixed', 'fixed'] }));

  it('does not where a hinge holds the frame, and does where legs alone do', () => {
    expect(freeToSway(carried().laid)).toEqual([false, false]);
    expect(freeToSway(carried({ hinged: false }).laid)).toEqual([true, true]);
    const { findings, strength } = planned({ hinged: false, legs: fixed(TWO) });
    expect(strength.struts.map(({ factor }) => factor.value)).toEqual([1.2, 1.2]);
    expect(findings.filter(({ code }) => code === 'legs-sway')).toHaveLength(1);
    expect(findings[0]!.data['names']).toBe('leg 1, leg 2');
  });

  it('does where the one leg points at the hinge', () => {
    const pointing: Under = { ...TWO[0]!, foot: at(100, 300, 0) };
    expect(freeToSway(carried({ legs: [pointing] }).laid)).toEqual([true]);
  });

  it('does not where six legs in six ways hold the frame by themselves', () => {
    const leg = (member: string, station: number, x: number, y: number, z: number): Under => ({
      member,
      station,
      foot: at(x, y, z),
      held: ['pinned', 'pinned'],
    });
    const six = [
      leg('port arm', 50, 200, 300, -400),
      leg('port arm', 50, -100, 600, -400),
      leg('starboard arm', 50, 200, -300, -400),
      leg('starboard arm', 50, -300, -300, -400),
      leg('port arm', 450, -450, 600, -400),
      leg('port arm', 450, -450, 100, -400),
    ];
    expect(freeToSway(carried({ hinged: false, legs: six }).laid)).toEqual([false, false, false, false, false, false]);
    expect(freeToSway(carried({ hinged: false, legs: six.slice(1) }).laid)).toContain(true);
  });

  it('leaves nothing to tell of a leg that is pinned at both ends, and says so', () => {
    const { findings, strength } = planned({ hinged: false });
    expect(strength.struts[0]!.factor.value).toBe(1);
    expect(findings.map(({ code }) => code)).toContain('legs-hold-nothing');
    expect(findings.map(({ code }) => code)).not.toContain('legs-sway');
  });
});

describe('straight stretches', () => {
  const told = (made: Made = {}) =>
    planned(made).strength.spans.map(({ member, case: kind, from, to }) => [member, kind, from.value, to.value]);

  it('run from what holds a tube to what holds it next, or to its free end; a bend holds nothing', () => {
    expect(told()).toEqual([
      ['port arm', 'beam', 0, 300],
      ['port arm', 'cantilever', 300, 500],
      ['starboard arm', 'beam', 0, 300],
      ['starboard arm', 'cantilever', 300, 500],
      ['bar', 'beam', 0, 600],
    ]);
  });

  it('hang free on both sides of a single hold', () => {
    expect(told({ hinged: false }).filter(([member]) => member === 'port arm')).toEqual([
      ['port arm', 'cantilever', 0, 300],
      ['port arm', 'cantilever', 300, 500],
    ]);
    expect(told({ hinged: false, legs: [] })).toEqual([['bar', 'beam', 0, 600]]);
  });

  it('are held by fixing points as well', () => {
    const study = carried({ legs: [] });
    const pad = {
      fixing: 'pad' as const,
      name: 'pad',
      at: { member: 'port arm', spot: 'finish' as const, number: 1, distance: 0 },
      off: at(0, 0, 0),
      lands: null,
      tolerance: null,
      plate: null,
    };
    const { spans } = planStrength({ ...study, source: { ...study.source, fixing: [pad] } }).strength;
    expect(spans[0]).toMatchObject({ member: 'port arm', case: 'beam', to: { value: 500 } });
  });

  it('have a band from the leg that holds them', () => {
    const [beam] = planned().strength.spans;
    expect(beam!.length.band!.plusMinus).toBeCloseTo(2, 9);
    const { stress, sag } = beam!.loads[0]!;
    expect(stress.band!.plusMinus / stress.value).toBeCloseTo(2 / 300, 9);
    expect(sag.band!.plusMinus / sag.value).toBeCloseTo(6 / 300, 9);
    expect(planned().strength.spans.at(-1)!.length.band).toBeNull();
  });

  it('are told once a member with the smallest load that bends them too far', () => {
    const over = planned().findings.filter(({ code }) => code === 'load-over-proof');
    // 600 mm of 25.4 × 1.65 of 190 MPa stand 667 N at the middle (146 MPa) and no 890 N (194 MPa)
    expect(over.find(({ data }) => data['member'] === 'bar')).toMatchObject({
      grade: 'caution',
      data: { load: 'rail-vessel', high: 190 },
    });
    expect(over.filter(({ data }) => data['member'] === 'port arm')).toHaveLength(1);
    expect(planned({ load: 880 }).findings.find(({ data }) => data['member'] === 'bar')!.data['load']).toBe('own');
    expect(describeFinding(over[0]!, { length: 'mm', fraction: 16 })).toMatch(/local codes and a qualified person/);
  });

  it('are not spoken of where nothing is said of what carries the frame', () => {
    expect(codes({ hinged: false, legs: [] })).toEqual([]);
    expect(codes({ hinged: false, legs: [], load: 1500 })).toEqual(['load-over-proof']);
  });
});

describe('loads', () => {
  it('are the published ones as they are printed, and one of one’s own', () => {
    const list = planned({ load: 2000 }).strength.loads;
    expect(list.map(({ key, load }) => [key, load.value, load.working.sources])).toEqual([
      ['rail-vessel', 890, ['cfr-46-177']],
      ['guardrail', 890, ['cfr-29-1910']],
      ['midrail', 667, ['cfr-29-1910']],
      ['boarding-step', 1500, ['en-1502']],
      ['boarding-rail', 300, ['en-1502']],
      ['own', 2000, ['typed']],
    ]);
    expect(planned().strength.loads).toHaveLength(5);
    for (const span of planned({ load: 2000 }).strength.spans)
      expect(span.loads.map(({ key }) => key)).toEqual(list.map(({ key }) => key));
  });

  it('press one leg by their lever over its own', () => {
    const [vessel, , , step] = planned().strength.loads;
    // the leg's line passes 240 from the hinge: 300 × 400/500. The hook's top is √(700² + 400²) away, 700 as seen from above
    expect(vessel!.legs.map(({ leg }) => leg)).toEqual(['leg 1', 'leg 2']);
    expect(vessel!.legs[0]!.force.value).toBeCloseTo((890 * Math.hypot(700, 400)) / 240, 6);
    expect(step!.legs[0]!.force.value).toBeCloseTo((1500 * 700) / 240, 6);
    expect(step!.legs[0]!.force.band!.plusMinus).toBeGreaterThan(1);
  });

  it('hang down along the plumb line as the structure lies now', () => {
    const turn = 0.1;
    const [, , , step] = planned({ up: at(Math.sin(turn), 0, Math.cos(turn)) }).strength.loads;
    // the hook leans away: the level distance of each of its ends from the hinge
    const level = Math.max(...[100, 400].map((z) => 700 * Math.cos(turn) + z * Math.sin(turn)));
    expect(step!.legs[0]!.force.value).toBeCloseTo((1500 * level) / 240, 6);
  });

  it('say nothing of legs without a hinge, nor of one that points at it', () => {
    for (const { legs } of planned({ hinged: false }).strength.loads) expect(legs).toEqual([]);
    const pointing: Under = { ...TWO[0]!, foot: at(100, 300, 0) };
    for (const { legs } of planned({ legs: [pointing] }).strength.loads) expect(legs).toEqual([]);
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

describe('whatever the site', () => {
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
    const [, , , step] = planned({ times: Math.max(0.01, times) }).strength.loads;
    expect(step!.legs[0]!.force.value).toBeCloseTo((1500 * 700) / 240, 6);
  });

  it('has nothing to tell of a frame that does not stand', () => {
    const study = carried();
    const nowhere = { ...study.laid, frame: null, legs: study.laid.legs.map(() => null) };
    const { strength, findings } = planStrength({ ...study, laid: nowhere, varied: [] });
    expect(strength).toMatchObject({ struts: [], spans: [] });
    expect(strength.loads.map(({ legs }) => legs)).toEqual([[], [], [], [], []]);
    expect(findings).toEqual([]);
  });
});
