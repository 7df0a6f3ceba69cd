import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Purge } from '../../server/job/purge.ts';
import { describeFinding } from '../../server/language/finding-words.ts';
import { contentsAtGauge, gaugeHolding } from '../../server/solver/purge/bottle.ts';
import { planBottle } from '../../server/solver/purge/bottle-plan.ts';
import { faultsOf } from './figures-in.ts';

type Bottle = Purge['bottle'];

/** 50 L at 200 bar by the gauge and 15 °C, with 10 bar left in it. */
const FULL: Bottle = { waterVolume: 50, gaugePressure: 200, temperature: 15, reserve: 10, gaugeNow: null };
const codes = (made: ReturnType<typeof planBottle>) => made.findings.map(({ code }) => code);

/** As a gauge shows it, and near to nothing, where most doubles are [bar]. */
const gauges = fc.oneof(fc.integer({ min: 0, max: 300 }), fc.double({ min: 0, max: 300, noNaN: true }));
const bottles = fc.record<Bottle>({
  waterVolume: fc.oneof(
    fc.integer({ min: 1, max: 50 }),
    fc.double({ min: 0, minExcluded: true, max: 500, noNaN: true }),
  ),
  gaugePressure: gauges,
  temperature: fc.double({ min: 5, max: 35, noNaN: true }),
  reserve: gauges,
  gaugeNow: fc.option(gauges),
});
const gas = fc.oneof(fc.double({ min: 0, max: 1e4, noNaN: true }), fc.constantFrom(0, 1e-9, 1e9));

describe('a full bottle', () => {
  const { bottle } = planBottle(FULL, 500);
  it('holds 10.72 m³, as its working says', () => {
    expect((bottle.contents.value / 1000).toFixed(2)).toBe('10.72');
    const [size, p, T, Z, Z0] = bottle.contents.working.inputs.map(({ value }) => value);
    const again = size! * ((p! + 1.013) / Z!) * (288.15 / (T! + 273.15)) * Z0!;
    expect(again).toBeCloseTo(bottle.contents.value, 8);
  });
  it('by about 5 % less or more where it is 10 K warmer or colder', () => {
    const share = (100 * bottle.contents.band!.plusMinus) / bottle.contents.value;
    expect(share.toFixed(0)).toBe('5');
    expect(bottle.contents.band?.from).toEqual(['bottle-10-K-warmer-or-colder']);
  });
  it('gives what is above the reserve', () => {
    const reserve = contentsAtGauge({ waterVolume: 50, celsius: 15 }, 10);
    expect(bottle.usable.value).toBeCloseTo(bottle.contents.value - reserve, 8);
    // 50 L × 11 bar, and argon at 11 bar is hardly off an ideal gas
    expect(reserve).toBeGreaterThan(550);
    expect(reserve).toBeLessThan(556);
  });
  it('takes a share, one bottle, and leaves the gauge where the rest of the gas has it', () => {
    expect(bottle.share.value).toBeCloseTo(50_000 / bottle.contents.value, 10);
    expect(bottle.bottles?.value).toBe(1);
    const left = contentsAtGauge({ waterVolume: 50, celsius: 15 }, bottle.gaugeAfter!.value);
    expect(left).toBeCloseTo(bottle.contents.value - 500, 6);
    expect(bottle.taken).toBeNull();
    expect(bottle.left).toBeNull();
  });
  it('has nothing to say', () => {
    expect(codes(planBottle(FULL, 500))).toEqual([]);
  });
});

describe('the gauge read again', () => {
  const read = (gaugeNow: number) => planBottle({ ...FULL, gaugePressure: 120, gaugeNow }, 500);
  it('120 to 105 bar of 50 L are 824 L', () => {
    const { taken, left } = read(105).bottle;
    expect(taken?.value.toFixed(0)).toBe('824');
    const usable = planBottle({ ...FULL, gaugePressure: 105 }, 500).bottle.usable.value;
    expect(left?.value).toBeCloseTo(usable, 8);
    // 2 K between the readings are worth about 1 % of what is in it, some 54 L
    expect(taken!.band!.plusMinus).toBeGreaterThan(40);
    expect(taken!.band!.plusMinus).toBeLessThan(60);
  });
  it('at or under the reserve nothing is left', () => {
    for (const now of [10, 3, 0]) {
      const made = read(now);
      expect(made.bottle.left?.value).toBe(0);
      expect(made.bottle.gaugeAfter).toBeNull();
      expect(made.findings[0]).toMatchObject({
        code: 'bottle-not-enough',
        grade: 'caution',
        field: '/purge/bottle/gaugeNow',
        data: { value: 500, high: 0, now },
      });
      expect(made.findings[0]?.data).not.toHaveProperty('bottles');
      expect(codes(made).includes('bottle-under-reserve')).toBe(now < 10);
    }
  });
  it('says whether what is left is enough, and where the gauge will stand', () => {
    const short = read(15);
    expect(codes(short)).toEqual(['bottle-not-enough']);
    const gauge = Number(short.findings[0]?.data['gauge']);
    expect(codes(read(gauge))).toEqual([]);
    expect(codes(read(gauge - 1))).toEqual(['bottle-not-enough']);
    const after = contentsAtGauge({ waterVolume: 50, celsius: 15 }, read(105).bottle.gaugeAfter!.value);
    expect(after).toBeCloseTo(contentsAtGauge({ waterVolume: 50, celsius: 15 }, 105) - 500, 6);
  });
  it('that counts the whole job is said in words', () => {
    const { units } = newJob('hoop');
    const [said] = read(15).findings;
    expect(describeFinding(said!, units)).toContain('It reads 15 bar now: this counts the whole job as still to do.');
    expect(describeFinding(planBottle({ ...FULL, gaugePressure: 15 }, 500).findings[0]!, units)).not.toContain('now');
  });
  it('as before, nothing was taken', () => {
    expect(read(120).bottle.taken?.value).toBe(0);
    expect(codes(read(120))).toEqual([]);
  });
  it('a gauge that rose says nothing of what was taken, and taken away again it has nothing to say', () => {
    const rose = read(121);
    expect([rose.bottle.taken, rose.bottle.left]).toEqual([null, null]);
    expect(rose.bottle.gaugeAfter?.value).toBe(
      planBottle({ ...FULL, gaugePressure: 120 }, 500).bottle.gaugeAfter?.value,
    );
    expect(rose.findings).toEqual([
      {
        code: 'bottle-gauge-rose',
        grade: 'caution',
        field: '/purge/bottle/gaugeNow',
        data: { value: 121, high: 120 },
        wayOut: { field: '/purge/bottle/gaugeNow', value: null },
      },
    ]);
  });
});

describe('a bottle that does not last', () => {
  const small: Bottle = { ...FULL, waterVolume: 10, gaugePressure: 100 };
  const made = planBottle(small, 2500);
  it('says how many there must be, and what one would have to read', () => {
    const { usable, bottles: count, gaugeAfter } = made.bottle;
    expect(gaugeAfter).toBeNull();
    expect(count?.value).toBe(Math.ceil(2500 / usable.value));
    expect(made.findings).toMatchObject([
      {
        code: 'bottle-not-enough',
        grade: 'caution',
        field: '/purge/bottle/gaugePressure',
        data: { value: 2500, high: usable.value, bottles: count?.value },
      },
    ]);
    const gauge = Number(made.findings[0]?.data['gauge']);
    expect(codes(planBottle({ ...small, gaugePressure: gauge }, 2500))).toEqual([]);
    expect(codes(planBottle({ ...small, gaugePressure: gauge - 1 }, 2500))).toEqual(['bottle-not-enough']);
  });
  it('says no reading where none would do', () => {
    expect(planBottle(small, 5000).findings[0]?.data).not.toHaveProperty('gauge');
  });
  it.each([
    ['empty', { gaugePressure: 0 }],
    ['at its reserve', { gaugePressure: 10 }],
    ['under its reserve', { reserve: 250 }],
  ])('%s it gives nothing, and no number of them does', (_, changes: Partial<Bottle>) => {
    const none = planBottle({ ...FULL, ...changes }, 100);
    expect(none.bottle.usable.value).toBe(0);
    expect(none.bottle.bottles).toBeNull();
    expect(none.bottle.gaugeAfter).toBeNull();
    const under = (changes.reserve ?? FULL.reserve) > (changes.gaugePressure ?? FULL.gaugePressure);
    expect(codes(none)).toEqual(['bottle-not-enough', ...(under ? ['bottle-under-reserve'] : [])]);
    expect(none.findings[0]?.data).not.toHaveProperty('bottles');
  });
});

describe('a reserve that the bottle does not hold', () => {
  it.each([
    [{ reserve: 250 }, 200, 10],
    [{ reserve: 60, gaugeNow: 40 }, 40, 10],
    [{ reserve: 20, gaugePressure: 10 }, 10, 5],
    [{ reserve: 20, gaugePressure: 5 }, 5, null],
    [{ reserve: 20, gaugeNow: 0 }, 0, null],
    // a gauge that rose is not this bottle's
    [{ reserve: 120, gaugePressure: 100, gaugeNow: 150 }, 100, 10],
  ] as const)('%j reads %d bar and could leave %s', (changes, high, value) => {
    const field = '/purge/bottle/reserve';
    const made = planBottle({ ...FULL, ...changes }, 0);
    const said = made.findings.find(({ code }) => code === 'bottle-under-reserve');
    const wayOut = value === null ? null : { field, value };
    const data = { value: changes.reserve, high };
    expect(said).toEqual({ code: 'bottle-under-reserve', grade: 'caution', field, data, wayOut });
    if (value === null) return;
    const after = planBottle({ ...FULL, ...changes, reserve: value }, 0);
    expect(codes(after)).not.toContain('bottle-under-reserve');
    expect((after.bottle.left ?? after.bottle.usable).value).toBeGreaterThan(0);
  });
});

it('is made of every bottle, in numbers', () => {
  const seen = { lasts: 0, short: 0, none: 0 };
  fc.assert(
    fc.property(bottles, gas, (typed, job) => {
      const made = planBottle(typed, job);
      expect(faultsOf(made.bottle)).toEqual([]);
      const { contents, usable, bottles: count, gaugeAfter, left } = made.bottle;
      const last = left === null ? typed.gaugePressure : typed.gaugeNow!;
      expect(usable.value).toBeLessThanOrEqual(contents.value);
      const short = job > (left ?? usable).value;
      expect(codes(made).includes('bottle-under-reserve')).toBe(typed.reserve > last);
      expect(codes(made).includes('bottle-not-enough')).toBe(short);
      expect(gaugeAfter === null).toBe(short);
      if (gaugeAfter !== null) {
        expect(gaugeAfter.value).toBeGreaterThanOrEqual(Math.min(typed.reserve, last) - 1e-6);
        expect(gaugeAfter.value).toBeLessThanOrEqual(last + 1e-6);
      }
      seen[count === null ? 'none' : short ? 'short' : 'lasts'] += 1;
    }),
    { numRuns: 600 },
  );
  for (const often of Object.values(seen)) expect(often).toBeGreaterThan(25);
});

it('finds the gauge reading of every contents again', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 300, noNaN: true }),
      fc.double({ min: 5, max: 35, noNaN: true }),
      (p, celsius) => {
        const bottle = { waterVolume: 20, celsius };
        expect(gaugeHolding(bottle, contentsAtGauge(bottle, p))).toBeCloseTo(p, 6);
      },
    ),
  );
  expect(gaugeHolding({ waterVolume: 20, celsius: 15 }, 1e6)).toBeNull();
});
