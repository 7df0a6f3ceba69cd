import { describe, expect, it } from 'vitest';
import type { Document } from '../../server/job/check-value.ts';
import { plan } from '../../server/solver/plan.ts';
import { jobBeforeQuotes } from './job-before-quotes.ts';
import { upgraded } from './upgraded.ts';
import { versionOneJob } from './version-1-job.ts';

const OLD = versionOneJob.rates;

describe('the price of a job of version 5', () => {
  const pricedBy = (document: Document) => {
    const { quote } = plan(upgraded(document));
    return quote!.options.find(({ scope }) => scope === quote!.scope)!;
  };

  it('of a hoop is what its rates make of its metres, bends and cuts', () => {
    const { lines, total, open } = pricedBy({ ...jobBeforeQuotes('hoop'), version: 5 });
    const metres = lines[0]!.quantity!.value;
    const hours = (set: { setUp: number; each: number }, count: number) => (set.setUp + set.each * count) / 60;
    const { tubePerMetre, labourPerHour, times } = OLD;
    const amounts = [
      Math.round(metres * tubePerMetre),
      Math.round(hours(times.bend, 2) * labourPerHour.bend),
      Math.round(hours(times.cut, 2) * labourPerHour.cut),
    ];
    expect(lines.map(({ key, amount }) => [key, amount])).toEqual([
      ['tube', amounts[0]],
      ['bend', amounts[1]],
      ['cut', amounts[2]],
    ]);
    expect([total, open]).toEqual([amounts[0]! + amounts[1]! + amounts[2]!, []]);
  });

  it('of a welded frame is line by line what it was before, with the same lines open', () => {
    const { lines, total } = pricedBy({
      ...versionOneJob,
      cameBack: null,
      rates: { ...OLD, fillerPerKilogram: 2200 },
    });
    // our own digits: what the program that wrote version 5 made of this job
    const before = {
      tube: 4446,
      gas: 235,
      filler: 15,
      bend: 2773,
      cut: 2607,
      fit: 2687,
      purge: 1273,
      weld: 2321,
      finish: null,
    };
    const charged = lines.filter(({ amount }) => amount !== 0);
    expect(Object.fromEntries(charged.map(({ key, amount }) => [key, amount]))).toEqual(before);
    expect(total).toBe(16_357);
  });
});
