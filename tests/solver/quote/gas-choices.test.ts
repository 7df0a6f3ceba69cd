import { describe, expect, it } from 'vitest';
import type { Job, SettledJob } from '../../../server/job/job.ts';
import type { GasChoice } from '../../../server/plan/quote.ts';
import { planPurge } from '../../../server/solver/purge/plan-purge.ts';
import { purgeWork } from '../../../server/solver/purge/purge-work.ts';
import type { JobWork } from '../../../server/solver/pricing.ts';
import { addQuantities } from '../../../server/solver/quote/add-quantities.ts';
import { gasChoices } from '../../../server/solver/quote/gas-choices.ts';
import { priceOf } from '../../../server/solver/quote/price-of.ts';
import type { Quantities } from '../../../server/solver/quote/quantities.ts';
import { workQuantities } from '../../../server/solver/quote/work-quantities.ts';
import { formulaValue } from '../formula-value.ts';
import { contextOf, holes, hoopJob, jobOf, LEG, MAIN, pad, type Cut } from '../purge-frames.ts';
import { own, SOME, TYPED } from './made-up-order.ts';

const settled = (job: Job): SettledJob => ({
  ...job,
  closing: { ...job.closing, shrinkage: 1 },
  rates: { ...TYPED, labour: { ...TYPED.labour, purge: { ...TYPED.labour.purge, machine: own(600) } } },
});

function workOn(job: Job, cuts: readonly Cut[] = []): { job: SettledJob; work: JobWork } {
  const known = settled(job);
  const gas = contextOf(known, cuts);
  const effort = { welds: gas.welds.length, cuts: gas.welds.length, bends: 0, pieces: [], bentTube: 0, joints: [] };
  return { job: known, work: { effort, welds: gas.welds, gas, purge: purgeWork(gas) } };
}

const TWO: readonly Cut[] = [1000, 2000].map((station) => ({ member: 'main', station }));
const main = (changes: Partial<Job['purge']> = {}) => workOn(jobOf([MAIN], { hold: 60, ...changes }), TWO);
/** As the plan asks for them: beside the purge of the same work. */
const choicesOf = (made: { job: SettledJob; work: JobWork }, legs: Quantities | null = null) =>
  gasChoices({ ...made, legs, purge: planPurge(made.work.gas).purge });
const named = (choices: readonly GasChoice[]) => choices.map(({ extent, joints }) => `${extent} ${joints}`);

describe('two welds in one tube', () => {
  const made = main();
  const [together, single] = choicesOf(made);

  it('are made in one filling, or in one each with the air back between them', () => {
    expect([together!.fillings.value, single!.fillings.value]).toEqual([1, 2]);
    // another filling: 2.8534 L × 8.381 volumes, and 5 L/min for one more hold of 60 s
    expect(1000 * (single!.gas.value - together!.gas.value)).toBeCloseTo(23.915 + 5, 2);
    // 2.3915 min of waiting, a hold, and 5 min of the shop's own for a filling
    expect(single!.minutes.value - together!.minutes.value).toBeCloseTo(2.3915 + 1 + 5, 3);
  });

  it('cost what the lines of the quote say, and more one by one', () => {
    const lines = priceOf({ quantities: workQuantities(made.job, made.work), job: made.job, quantity: 1 }).lines;
    const sum = lines
      .filter(
        ({ key, of }) =>
          ['gas', 'bottle-rent', 'purge', 'bottle'].includes(key) || (key === 'machine' && of === 'purge'),
      )
      .reduce((total, { amount }) => total + amount!, 0);
    expect(together!.cost?.value).toBe(sum);
    expect(together!.cost?.working.inputs.reduce((total, { value }) => total + value, 0)).toBe(sum);
    // gas at 1200 a m³, and 2.3915 + 5 min at 5000 and 600 an hour, each line rounded by itself
    const gas = Math.round(1200 * single!.gas.value) - Math.round(1200 * together!.gas.value);
    const labour = ((2.3915 + 5) / 60) * 5600;
    expect(Math.abs(single!.cost!.value - together!.cost!.value - gas - labour)).toBeLessThan(2);
  });

  it('mark how the job has it', () => {
    const all = choicesOf(made);
    expect(named(all)).toEqual(['whole-frame together', 'whole-frame one-by-one', 'dams together', 'dams one-by-one']);
    expect(all.map(({ chosen }) => chosen)).toEqual([true, false, false, false]);
    expect(choicesOf(main({ extent: 'dams' })).map(({ chosen }) => chosen)).toEqual([false, false, true, false]);
  });
});

describe('what a choice takes', () => {
  const frames: readonly (readonly [string, { job: SettledJob; work: JobWork }])[] = [
    ['a tube with two cuts', main()],
    ['a saddle whose bores do not meet', workOn(jobOf([MAIN, LEG], { hold: 60 }))],
    ['bores that meet through holes', workOn(hoopJob([300], holes({ underSaddles: 'all' })))],
    ['two crossbars and pads', workOn(hoopJob([150, 300], {}, { fixing: [pad('hoop', 'start', 10)] }))],
    ['a gas that never reaches the target', main({ gas: { from: 'certificate', oxygen: 900 }, targetOxygen: 100 })],
    ['no way up', main({ up: { x: 0, y: 0, z: 0 } })],
  ];

  it.each(frames)('%s: never more fillings together than one by one, and the times of the plan', (_, made) => {
    const choices = choicesOf(made);
    expect(choices).toHaveLength(4);
    for (const { fillings, minutes, gas } of choices)
      for (const told of [fillings, minutes, gas]) expect(formulaValue(told)).toBeCloseTo(told.value, 9);
    const plan = planPurge(made.work.gas).purge;
    for (const extent of ['whole-frame', 'dams'] as const) {
      const [together, single] = choices.filter((choice) => choice.extent === extent);
      expect(together!.fillings.value).toBeLessThanOrEqual(single!.fillings.value);
      expect(single!.fillings.value).toBe(made.work.welds.length);
      expect(single!.stops).toEqual(together!.stops);
      const planned = plan?.extents.find((one) => one.extent === extent);
      if (planned === undefined) {
        expect(together!.stops).toContain('target-below-gas');
        continue;
      }
      expect(together!.fillings.value).toBe(planned.setups.value);
      expect(together!.minutes.value).toBeCloseTo(planned.minutes.value, 9);
      expect([...together!.stops].sort()).toEqual([...planned.stops].sort());
      expect(1000 * together!.gas.value).toBeCloseTo(planned.gas.value + plan!.torchGas.value, 9);
    }
  });

  it('there is none without a weld', () => {
    expect(choicesOf(workOn(jobOf([MAIN])))).toEqual([]);
  });
});

describe('bottles', () => {
  const bottled = (changes: Partial<Job['purge']['bottle']>, legs: Quantities | null = null) => {
    const { job } = main();
    const purge = { ...job.purge, bottle: { ...job.purge.bottle, waterVolume: 1, ...changes } };
    const made = workOn({ ...job, purge }, TWO);
    return { made, choices: choicesOf(made, legs) };
  };

  it('are begun and changed as the gas runs out, and changing takes its minutes', () => {
    const { made, choices } = bottled({ gaugePressure: 40, reserve: 5 });
    const [together] = choices;
    const { usable } = planPurge(made.work.gas).purge!.bottle;
    const begun = Math.ceil((1000 * together!.gas.value) / usable.value);
    expect(begun).toBeGreaterThan(1);
    expect([together!.bottles?.value, together!.changes?.value]).toEqual([begun, begun - 1]);
    const planned = planPurge(made.work.gas).purge!.extents[0]!;
    expect(together!.minutes.value).toBeCloseTo(planned.minutes.value + 10 * (begun - 1), 9);
  });

  it('are not told where nothing can be taken from one, and the gas of legs comes out of them as well', () => {
    const { choices } = bottled({ gaugePressure: 5, reserve: 5 });
    expect(choices[0]).toMatchObject({ bottles: null, changes: null });
    const [without] = bottled({ gaugePressure: 200 }).choices;
    const [withLegs] = bottled({ gaugePressure: 200 }, SOME).choices;
    // 300 L of purge, 100 L of torch
    expect(withLegs!.gas.value - without!.gas.value).toBeCloseTo(0.4, 12);
    expect(withLegs!.bottles!.value).toBeGreaterThan(without!.bottles!.value);
    expect(withLegs!.fillings).toEqual(without!.fillings);
  });

  it('of the chosen one cost what frame and legs together do', () => {
    const made = main();
    const [together] = choicesOf(made, SOME);
    const quantities = addQuantities(workQuantities(made.job, made.work), SOME);
    const { lines } = priceOf({ quantities, job: made.job, quantity: 1 });
    const gas = lines.filter(({ key, of }) => ['gas', 'bottle-rent', 'purge'].includes(key) || of === 'purge');
    expect(together!.cost?.value).toBe(gas.reduce((sum, { amount }) => sum + amount!, 0));
  });

  it('cost nothing that can be told while a rate of the gas is open', () => {
    const { job, work } = main();
    const gas = { ...job.rates.gas, perCubicMetre: own(null) };
    expect(choicesOf({ job: { ...job, rates: { ...job.rates, gas } }, work })[0]?.cost).toBeNull();
    const weld = { ...job.rates.labour.weld, hour: own(null) };
    const other = { ...job, rates: { ...job.rates, labour: { ...job.rates.labour, weld } } };
    expect(choicesOf({ job: other, work })[0]?.cost).not.toBeNull();
  });
});
