import { describe, expect, it } from 'vitest';
import type { SettledJob } from '../../../server/job/job.ts';
import type { Rates } from '../../../server/job/rates.ts';
import type { WayKey } from '../../../server/plan/correction.ts';
import { byOperation } from '../../../server/solver/quote/operations.ts';
import { breakEvenWords } from '../../../server/language/break-even-words.ts';
import type { Quantities } from '../../../server/solver/quote/quantities.ts';
import { EMPTY, evens, NONE } from './break-even-of.ts';
import { jobWith, operation, own, piece, SOME, type Changes } from './made-up-order.ts';

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
  evens(job, works, legs).map(({ by, way, other, at, now, cheaper }) => ({
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

  it('cost alike at four joints, at 120.00 an hour, and never by how many frames', () => {
    expect(found(plain())).toEqual([
      { by: 'joints', ...pair, at: 4, now: 2 },
      // 20 min: a third of an hour
      { by: 'labour', ...pair, at: 12_000, now: 6000 },
      { by: 'frames', ...pair, at: null, now: 1 },
    ]);
  });

  it('tell of an offer that could change nothing only where one is asked for, and of no hour that is unheard of', () => {
    const outside = { ...plain(), quote: { ...plain().quote, bending: 'outside' as const } };
    expect(only('offer', outside)).toMatchObject({ at: null, cheaper: 'splice-fewest' });
    expect(only('offer', plain())).toBeUndefined();
    // a new frame of 100 times the tube: an hour would have to cost some 50 times what it does
    const dear = { ...ANEW, quantities: { ...ANEW.quantities, pieces: [piece('hoop', 200_000)] } };
    expect(only('joints', plain(), [SPLICE, dear])).toMatchObject({ cheaper: 'splice-fewest' });
    expect(only('labour', plain(), [SPLICE, dear])).toBeUndefined();
  });

  it('say of an hour what was varied, and that it is the mean now', () => {
    const [, labour] = evens(plain(), [SPLICE, ANEW]);
    expect(breakEvenWords(labour!, String)).toBe(
      'splice, fewest welds: cheaper up to 12000 for an hour of handwork, from cutting to finishing; above that: new frame. Now, on the mean: 6000.',
    );
  });

  it('are not told by the hour where the mean of unlike hours would say what is not so', () => {
    // welding of the splice is cheap and its fitting dear: 2 × 10 min at 60.00 and 2 × 10 at 120.00
    const fit = { ...operation({ each: 10 }), hour: own(12_000) };
    const labour = { ...PLAIN.labour!, fit };
    const splice = { ...SPLICE, quantities: counting({ weld: 2, fit: 2 }) };
    const even = only('labour', plain({ rates: { labour } }), [splice, ANEW]);
    // 40 min: 4000 is reached at 60.00 an hour, and the mean is 90.00: the new frame is cheaper, as it is
    expect(even).toMatchObject({ at: 6000, now: 9000, cheaper: 'new-frame' });
    // the same hours where the new frame takes fitting as well: dear hours are all in it
    const fitted = { ...ANEW, quantities: { ...ANEW.quantities, counts: { ...NONE, bend: 2, fit: 2 } } };
    const cheap = { ...SPLICE, quantities: counting({ weld: 5 }) };
    // 5000 now, at 60.00; the new frame 4000 and 4000 for its fitting at 120.00: the splice is cheaper, while at one rate
    // for all the splice takes 50 min against 4000 and 20 min: alike at 80.00
    expect(only('labour', plain({ rates: { labour } }), [cheap, fitted])).toMatchObject({ at: 8000, now: 6000 });
    const dearWeld = { ...PLAIN.labour!, weld: { ...hourly, hour: own(9000) }, fit: { ...fit, hour: own(30_000) } };
    // 7500 against 14 000: the splice is cheaper, and 90.00 an hour for all would say that it is not
    expect(only('labour', plain({ rates: { labour: dearWeld } }), [cheap, fitted])).toBeUndefined();
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

  it('a rebend of eight bends outside is dearer than a frame that a bender bends for up to 14 000', () => {
    const outside = { ...plain(), quote: { ...plain().quote, bending: 'outside' as const } };
    expect(only('offer', plain(), [REBEND, ANEW])).toBeUndefined();
    expect(only('offer', outside, [REBEND, ANEW])).toEqual({
      by: 'offer',
      way: 'rebend',
      other: 'new-frame',
      // 5000 for the order and 8 × 1500, less 3000 for new tube; the rates ask at least 8000 for the new frame
      at: 14_000,
      now: 8000,
      cheaper: 'new-frame',
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
    expect(evens(plain(), [{ scope: 'frame', quantities: SOME }])).toEqual([]);
  });

  it('nothing is said while a line of either stands open', () => {
    const labour = { ...PLAIN.labour!, weld: { ...hourly, hour: own(null) } };
    expect(found(plain({ rates: { labour } }))).toEqual([]);
    // the new frame needs no filler: its tube alone is open
    expect(found(plain({ rates: { tubes: [] } }))).toEqual([]);
  });
});
