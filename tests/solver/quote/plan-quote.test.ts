import { describe, expect, it } from 'vitest';
import { landingStage } from '../../../db/demo/landing-stage.ts';
import { newJob } from '../../../server/job/default-job.ts';
import type { Job } from '../../../server/job/job.ts';
import { plan } from '../../../server/solver/plan.ts';
import { own } from './made-up-order.ts';

const demo = landingStage();
const planned = plan(demo);
const quote = planned.quote!;

describe('the quote of a frame that came back', () => {
  it('has an option for every way that is possible, and no other', () => {
    const possible = planned.correction!.ways.filter((way) => way.possible).map(({ key }) => key);
    expect(possible.length).toBeGreaterThan(2);
    expect(quote.options.map(({ scope }) => scope)).toEqual(possible);
    expect(quote.scope).toBe(planned.correction!.chosen);
    expect(quote.options.find(({ scope }) => scope === quote.scope)?.offered).toBe(true);
  });

  it('gives every way its price, legs and all', () => {
    for (const { scope, breaks, open, lines } of quote.options) {
      const way = planned.correction!.ways.find(({ key }) => key === scope)!;
      expect(way.costAtLeast.value).toBe(breaks[0]!.totalEach);
      expect(way.cost === null).toBe(open.length > 0);
      const pieces = lines.filter(({ key }) => key === 'tube').flatMap(({ parts }) => parts.map(({ name }) => name));
      for (const leg of demo.site.legs) expect(pieces).toContain(leg.name);
    }
  });

  it('charges what is sawn off bars', () => {
    const shown = quote.options.find(({ scope }) => scope === quote.scope)!;
    const parts = shown.lines.filter(({ key }) => key === 'tube').flatMap((line) => line.parts);
    expect(parts.map(({ name, value }) => [name, value])).toEqual(
      planned.stock!.pieces.map(({ name, length }) => [name, length.value / 1000]),
    );
  });

  it('tells what stands open in the option that is shown, once', () => {
    const { labour } = demo.rates;
    const open: Job = {
      ...demo,
      rates: {
        ...demo.rates,
        fillerPerKilogram: own(null),
        labour: { ...labour, finish: { ...labour.finish, hour: own(null), setUp: { ...own(15), example: true } } },
      },
    };
    const { findings } = plan(open);
    const told = findings.filter(({ code }) => code === 'rate-open' || code === 'time-open');
    expect(told.map(({ field }) => field).sort()).toEqual([
      '/rates/fillerPerKilogram/value',
      '/rates/labour/finish/hour/value',
    ]);
    expect(findings.filter(({ code }) => code === 'rates-are-examples')).toMatchObject([
      { grade: 'caution', field: '/rates' },
    ]);
  });
});

describe('the quote of a frame that is to be made', () => {
  const hoop: Job = {
    ...newJob('hoop'),
    frame: demo.frame,
    quote: { ...newJob('hoop').quote, date: '2026-11-25', validDays: 30 },
  };
  const only = (job: Job) => plan(job).quote!;

  it('has the frame for its option, and stands for so many days', () => {
    const { options, scope, date, validUntil, currency, minorDigits } = only(hoop);
    expect(scope).toBe('frame');
    expect(options).toMatchObject([{ scope: 'frame', offered: true }]);
    expect({ date, validUntil, currency, minorDigits }).toEqual({
      date: '2026-11-25',
      validUntil: '2026-12-25',
      currency: 'EUR',
      minorDigits: 2,
    });
  });

  it('counts bends, cuts and welds as the plan has them', () => {
    const { frame, welding, purge, quote: made } = plan(hoop);
    const input = (key: string, symbol: string) =>
      made!.options[0]!.lines.find((line) => line.key === key)?.quantity?.working.inputs.find(
        (one) => one.symbol === symbol,
      )?.value;
    expect(input('bend', 'n')).toBe(frame!.members.reduce((sum, { bends }) => sum + bends.length, 0));
    expect(input('weld', 'n')).toBe(welding!.welds.length);
    expect(input('purge', 'n')).toBe(purge!.setups.length);
    expect(input('gas', 'V')).toBeCloseTo(purge!.jobGas.value, 9);
  });

  it('grinds as long as the finish says, and not at all where welds are left as they are', () => {
    const made = plan(hoop);
    const line = (job: Job) => only(job).options[0]!.lines.find(({ key }) => key === 'finish');
    expect(line(hoop)?.quantity?.working.inputs.find(({ symbol }) => symbol === 'x')?.value).toBeCloseTo(
      made.finish!.total.value,
      9,
    );
    const left: Job = { ...hoop, finish: { ...hoop.finish, treatment: 'none', cleaning: 'none' } };
    expect(line(left)).toBeUndefined();
    expect(only(left).options[0]!.lines.some(({ key }) => key === 'abrasives')).toBe(false);
    const cleaned: Job = { ...hoop, finish: { ...hoop.finish, treatment: 'none', cleaning: 'citric-3' } };
    expect(line(cleaned)?.parts.map(({ key }) => key)).toEqual(['set-up', 'each']);
  });

  it('has a bender’s offer in the place of bending', () => {
    const outside: Job = { ...hoop, quote: { ...hoop.quote, bending: 'outside', bendersOffer: 12_345 } };
    const lines = only(outside).options[0]!.lines;
    expect(lines.find(({ key }) => key === 'outside-bending')).toMatchObject({
      amount: 12_345,
      rateField: '/quote/bendersOffer',
      example: false,
    });
    expect(lines.some(({ key, of }) => key === 'bend' || (key === 'machine' && of === 'bend'))).toBe(false);
  });

  it('has the bent tube go by the metre where the shop reckons so', () => {
    const { rates } = hoop;
    const bend = { ...rates.labour.bend, perMetre: own(3) };
    const made = only({ ...hoop, rates: { ...rates, labour: { ...rates.labour, bend } } });
    const inputs = made.options[0]!.lines.find(({ key }) => key === 'bend')!.quantity!.working.inputs;
    const hoopLength = plan(hoop).frame!.members.find(({ bends }) => bends.length > 0)!.cutLength.value;
    expect(inputs.find(({ symbol }) => symbol === 'ℓ')?.value).toBeCloseTo(hoopLength / 1000, 9);
  });
});
