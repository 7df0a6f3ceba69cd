import { describe, expect, it } from 'vitest';
import type { SettledJob } from '../../../server/job/job.ts';
import type { Rates } from '../../../server/job/rates.ts';
import type { WayKey } from '../../../server/plan/correction.ts';
import { byOperation } from '../../../server/solver/quote/operations.ts';
import { breakEvens } from '../../../server/solver/quote/break-even.ts';
import { withJoints } from '../../../server/solver/quote/more-joints.ts';
import { priceOf } from '../../../server/solver/quote/price-of.ts';
import type { Quantities } from '../../../server/solver/quote/quantities.ts';
import { jobWith, operation, own, piece, SOME, TYPED, type Changes } from './made-up-order.ts';

const NONE = byOperation(() => 0);
const EMPTY: Quantities = {
  pieces: [],
  counts: NONE,
  metres: NONE,
  process: NONE,
  purgeGas: 0,
  torchGas: 0,
  filler: 0,
  welds: 0,
  parts: {},
};
const counting = (counts: Partial<Quantities['counts']>): Quantities => ({
  ...EMPTY,
  counts: { ...NONE, ...counts },
  welds: counts.weld ?? 0,
});

const work = operation({ each: 10 });
const hourly = { ...work, hour: own(6000) };
const free = operation({});
/** 10 min for each weld and 5 min for each bend, 100 a minute; 1500 a metre; nothing else. */
const PLAIN: Partial<Rates> = {
  waste: own(0),
  abrasivesPerWeld: own(0),
  labour: {
    bend: { ...operation({ each: 5 }), hour: own(6000) },
    cut: free,
    fit: free,
    purge: free,
    bottle: free,
    weld: hourly,
    finish: free,
  },
};
const plain = (more: Changes = {}): SettledJob =>
  jobWith({
    ...more,
    rates: { ...PLAIN, ...more.rates },
    quote: { travel: { trips: 0, kilometres: 0, hours: 0 }, ...more.quote },
  });

const SPLICE = { scope: 'splice-fewest' as WayKey, quantities: counting({ weld: 2 }) };
/** 2 m of tube for 3000, two bends for 1000. */
const ANEW = {
  scope: 'new-frame' as WayKey,
  quantities: { ...counting({ bend: 2 }), pieces: [piece('hoop', 2000)], anew: true },
};
const REBEND = { scope: 'rebend' as WayKey, quantities: counting({ bend: 8 }) };

const found = (job: SettledJob, works = [SPLICE, ANEW], legs: Quantities | null = null) =>
  breakEvens({ job, works, legs }).map(({ by, way, other, at, now, cheaper }) => ({
    by,
    way,
    other,
    at: at?.value ?? null,
    now: now.value,
    cheaper,
  }));
const only = (by: string, ...asked: Parameters<typeof found>) => found(...asked).find((one) => one.by === by);

describe('a splice of 1000 a weld and a new frame of 4000', () => {
  const pair = { way: 'splice-fewest', other: 'new-frame', cheaper: 'splice-fewest' };

  it('cost alike at four joints, at 120.00 an hour, and never by what a bender asks', () => {
    expect(found(plain())).toEqual([
      { by: 'joints', ...pair, at: 4, now: 2 },
      // 20 min: a third of an hour
      { by: 'labour', ...pair, at: 12_000, now: 6000 },
      { by: 'offer', ...pair, at: null, now: 1000 },
      { by: 'frames', ...pair, at: null, now: 1 },
    ]);
  });

  it('with an hour of set-up the new frame is cheaper up to three frames', () => {
    const weld = { ...hourly, setUp: own(60) };
    const job = plain({ rates: { labour: { ...PLAIN.labour!, weld } } });
    // 6000 + 2000 n against 4000 n
    expect(only('frames', job)).toEqual({
      by: 'frames',
      way: 'new-frame',
      other: 'splice-fewest',
      at: 3,
      now: 1,
      cheaper: 'new-frame',
    });
    expect(only('frames', { ...job, quote: { ...job.quote, quantities: [4] } })).toMatchObject({
      now: 4,
      cheaper: 'splice-fewest',
    });
  });

  it('a rebend of eight bends is dearer than a frame that a bender bends for up to 1000', () => {
    expect(only('offer', plain(), [REBEND, ANEW])).toEqual({
      by: 'offer',
      way: 'rebend',
      other: 'new-frame',
      at: 1000,
      now: 1000,
      cheaper: 'rebend',
    });
  });

  it('a let-in piece makes two welds one joint, and takes its tube along', () => {
    const letIn = { ...piece('let-in 1', 500), kind: 'let-in' as const };
    const splice = { ...SPLICE, quantities: { ...SPLICE.quantities, pieces: [letIn] } };
    // 2000 for the welds and 750 for the tube of one joint: 4000 is reached at 1.45 of them
    expect(only('joints', plain(), [splice, ANEW])).toMatchObject({ at: 1, now: 1 });
    const dear = { ...ANEW, quantities: { ...ANEW.quantities, pieces: [piece('hoop', 20_000)] } };
    // 30 000 and 1000 against 2750 each
    expect(only('joints', plain(), [splice, dear])).toMatchObject({ at: 11 });
  });

  it('legs are no joints: they stay as they are', () => {
    const legs = counting({ weld: 3, cut: 4 });
    const both = (one: Quantities) => ({ ...one, counts: byOperation((key) => one.counts[key] + legs.counts[key]) });
    const works = [SPLICE, ANEW].map(({ scope, quantities }) => ({ scope, quantities: both(quantities) }));
    expect(only('joints', plain(), works, legs)).toMatchObject({ at: 4, now: 2 });
  });
});

describe('which ways are held against each other', () => {
  it('the cheapest splice against a new frame; nothing without one', () => {
    const dearer = { scope: 'splice-fairest' as WayKey, quantities: counting({ weld: 3 }) };
    expect(found(plain(), [dearer, SPLICE, ANEW]).every(({ way }) => way === 'splice-fewest')).toBe(true);
    expect(found(plain(), [SPLICE, REBEND])).toEqual([]);
    expect(found(plain(), [ANEW])).toEqual([]);
    expect(breakEvens({ job: plain(), works: [{ scope: 'frame', quantities: SOME }], legs: null })).toEqual([]);
  });

  it('nothing is said while a line of either stands open', () => {
    const labour = { ...PLAIN.labour!, weld: { ...hourly, hour: own(null) } };
    expect(found(plain({ rates: { labour } }))).toEqual([]);
    // the new frame needs no filler: its tube alone is open
    expect(found(plain({ rates: { tubes: [] } }))).toEqual([]);
  });
});

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
    const all = breakEvens({ job, works, legs: null });
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
      for (const key of ['cut', 'fit', 'purge', 'weld', 'finish'] as const)
        labour[key] = { ...labour[key], hour: own(hour) };
      return { ...job, rates: { ...job.rates, labour } };
    };
    const even = breakEvens({ job, works, legs: null }).find(({ by }) => by === 'labour')!;
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
