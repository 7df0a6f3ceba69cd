import { describe, expect, it } from 'vitest';
import type { SettledJob } from '../../../server/job/job.ts';
import type { WayKey } from '../../../server/plan/correction.ts';
import { withJoints } from '../../../server/solver/quote/more-joints.ts';
import { priceOf } from '../../../server/solver/quote/price-of.ts';
import type { Quantities } from '../../../server/solver/quote/quantities.ts';
import { EMPTY, evens, NONE } from './break-even-of.ts';
import { jobWith, own, piece, SOME, TYPED } from './made-up-order.ts';

/** Further than the ways below cost alike. */
const MOST = 150;

/** Every whole number up to which a has the lead and after which it has not. */
const lost = (most: number, lead: (at: number) => number): number[] =>
  Array.from({ length: most - 1 }, (_, index) => index + 1).filter((at) => lead(at) >= 0 && lead(at + 1) < 0);

describe('every number looked at one by one', () => {
  const splice = {
    ...SOME,
    pieces: [],
    anew: false,
    counts: { ...SOME.counts, bend: 0 },
    metres: { ...SOME.metres, bend: 0 },
  };
  const anew = {
    ...EMPTY,
    anew: true,
    pieces: [piece('hoop', 5000), piece('bar', 900)],
    counts: { ...NONE, cut: 4, bend: 4 },
  };
  const works = [
    { scope: 'splice-fewest' as WayKey, quantities: splice },
    { scope: 'new-frame' as WayKey, quantities: anew },
  ];
  const byBar = TYPED.tubes.map((tube) => ({ ...tube, by: 'bar' as const }));
  const jobs: [string, SettledJob][] = [
    ['by the metre', jobWith()],
    ['by the bar', jobWith({ rates: { tubes: byBar } })],
    [
      'dear labour',
      jobWith({ rates: { labour: { ...TYPED.labour, weld: { ...TYPED.labour.weld, hour: own(90_000) } } } }),
    ],
    [
      'a long set-up',
      jobWith({ rates: { labour: { ...TYPED.labour, weld: { ...TYPED.labour.weld, setUp: own(400) } } } }),
    ],
    ['five at once', jobWith({ quote: { quantities: [5, 1] } })],
  ];
  const costOf = (quantities: Quantities, job: SettledJob, quantity: number) =>
    priceOf({ quantities, job, quantity }).cost;

  it.each(jobs)('%s: joints and frames agree with it', (name, job) => {
    const quantity = job.quote.quantities[0]!;
    const joints = (at: number): number =>
      costOf(anew, job, quantity) -
      costOf(withJoints(splice, { times: at / 2, welds: 2, pads: 0, legs: null }), job, quantity);
    const all = evens(job, works);
    const [byJoints, byFrames] = (['joints', 'frames'] as const).map((by) => all.find((one) => one.by === by)!);
    if (joints(1) >= 0) expect(byJoints!.at?.value ?? null).toBe(lost(MOST, joints)[0] ?? null);
    else expect(byJoints).toMatchObject({ at: null, cheaper: 'new-frame' });
    const frames = (at: number): number => costOf(anew, job, at) - costOf(splice, job, at);
    const sign = frames(1) >= 0 ? 1 : -1;
    const places = lost(MOST, (at) => sign * frames(at));
    expect(byFrames!.at?.value ?? null).toBe(places[0] ?? null);
    expect(places).toHaveLength(name === 'a long set-up' ? 1 : 0);
    expect(byFrames!.way).toBe(sign > 0 ? 'splice-fewest' : 'new-frame');
  });

  it.each(jobs)('%s: a dearer hour never makes what is cheaper at the least cheaper above', (_, job) => {
    const at = (hour: number) => {
      const labour = { ...job.rates.labour };
      for (const key of ['cut', 'fit', 'purge', 'bottle', 'weld', 'finish'] as const)
        labour[key] = { ...labour[key], hour: own(hour) };
      return { ...job, rates: { ...job.rates, labour } };
    };
    const even = evens(job, works).find(({ by }) => by === 'labour')!;
    if (even.at === null) throw new Error('these cost alike somewhere');
    const hour = even.at.value;
    const quantity = job.quote.quantities[0]!;
    const by = (one: WayKey) => works.find(({ scope }) => scope === one)!.quantities;
    const lead = (rate: number) =>
      costOf(by(even.other), at(rate), quantity) - costOf(by(even.way), at(rate), quantity);
    // each of a dozen lines may be half a unit off
    expect(lead(hour)).toBeGreaterThanOrEqual(-12);
    expect(lead(hour + 1)).toBeLessThan(12);
    expect(lead(hour / 2)).toBeGreaterThan(0);
    expect(lead(hour * 2)).toBeLessThan(0);
  });
});
