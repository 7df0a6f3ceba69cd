import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SettledJob } from '../../server/job/job.ts';
import type { WayKey } from '../../server/plan/correction.ts';
import type { BreakEven } from '../../server/plan/quote.ts';
import { breakEvenWords } from '../../server/language/break-even-words.ts';
import { breakEvens } from '../../server/solver/quote/break-even.ts';
import { withJoints } from '../../server/solver/quote/more-joints.ts';
import { byOperation } from '../../server/solver/quote/operations.ts';
import { priceOf } from '../../server/solver/quote/price-of.ts';
import type { Quantities } from '../../server/solver/quote/quantities.ts';
import { jobWith, operation, own, piece, SOME, TYPED } from '../solver/quote/made-up-order.ts';

const NONE = byOperation(() => 0);
const CLOSELY = 60;

type Setting = {
  readonly job: SettledJob;
  readonly splice: Quantities;
  readonly anew: Quantities;
};

/** Bars and bottles that come in steps, set-ups that are paid once: so that the order may change more than once. */
const setting: fc.Arbitrary<Setting> = fc
  .record({
    bar: fc.integer({ min: 1500, max: 7000 }),
    perBar: fc.integer({ min: 500, max: 20_000 }),
    hoop: fc.integer({ min: 500, max: 1500 }),
    byBar: fc.boolean(),
    letIn: fc.integer({ min: 50, max: 900 }),
    weld: fc.record({ setUp: fc.integer({ min: 0, max: 120 }), each: fc.integer({ min: 1, max: 30 }) }),
    bend: fc.record({ setUp: fc.integer({ min: 0, max: 240 }), each: fc.integer({ min: 1, max: 30 }) }),
    hours: fc.record({ weld: fc.integer({ min: 1000, max: 9000 }), bend: fc.integer({ min: 1000, max: 9000 }) }),
    gas: fc.integer({ min: 0, max: 4000 }),
    quantity: fc.integer({ min: 1, max: 12 }),
  })
  .map(({ bar, perBar, hoop, byBar, letIn, weld, bend, hours, gas, quantity }) => {
    const tubes = [
      { ...TYPED.tubes[0]!, by: byBar ? ('bar' as const) : ('metre' as const), barLength: bar, perBar: own(perBar) },
    ];
    const labour = {
      ...TYPED.labour,
      weld: { ...operation(weld), hour: own(hours.weld) },
      bend: { ...operation(bend), hour: own(hours.bend) },
    };
    const job = jobWith({
      rates: { tubes, labour, gas: { ...TYPED.gas, by: 'bottles' } },
      quote: { quantities: [quantity], travel: { trips: 0, kilometres: 0, hours: 0 } },
    });
    const splice: Quantities = {
      ...SOME,
      anew: false,
      counts: { ...SOME.counts, bend: 0, weld: 4, finish: 4 },
      metres: { ...SOME.metres, bend: 0 },
      purgeGas: gas,
      pieces: [{ ...piece('let-in 1', letIn), kind: 'let-in' }],
      parts: {},
    };
    const anew: Quantities = {
      ...SOME,
      counts: { ...NONE, bend: 4, cut: 2 },
      metres: NONE,
      process: NONE,
      purgeGas: 0,
      torchGas: 0,
      filler: 0,
      welds: 0,
      pieces: [piece('hoop', hoop), piece('bar', hoop / 2)],
      parts: {},
    };
    return { job, splice, anew };
  });

/** What lines come to before they are rounded, by the whole price and nothing of the search. */
const exactOf = (quantities: Quantities, job: SettledJob, quantity: number): number =>
  priceOf({ quantities, job, quantity })
    .lines.filter(({ key }) => !['overhead', 'margin', 'rounding', 'tax'].includes(key))
    .reduce((sum, { exact }) => sum + exact!, 0);

const costOf = (quantities: Quantities, job: SettledJob, quantity: number): number =>
  priceOf({ quantities, job, quantity }).cost;

function evensOf({ job, splice, anew }: Setting): BreakEven[] {
  const works = [
    { scope: 'splice-fewest' as WayKey, quantities: splice },
    { scope: 'new-frame' as WayKey, quantities: anew },
  ];
  const quantity = job.quote.quantities[0]!;
  const options = works.map(({ scope, quantities }) => ({ scope, cost: costOf(quantities, job, quantity) }));
  return breakEvens({ job, works, legs: null, options });
}

/** Every number one by one: who is cheaper at the least, up to where, and whether he is again above that. */
function bruteOf(lead: (at: number) => number) {
  const SAME = 1e-6;
  const signs = Array.from({ length: CLOSELY }, (_, index) => lead(index + 1) >= -SAME);
  const spliceFirst = signs[0]!;
  // where both cost alike the one that has the lead at the least keeps it
  const holds = Array.from(
    { length: CLOSELY },
    (_, index) => (spliceFirst ? lead(index + 1) : -lead(index + 1)) >= -SAME,
  );
  const lost = holds.indexOf(false);
  return {
    first: spliceFirst ? 'splice-fewest' : 'new-frame',
    at: lost < 0 ? null : lost,
    again: lost >= 0 && holds.slice(lost).includes(true),
  };
}

describe('whatever bars and bottles do', () => {
  it('joints and frames are as every number of them looked at one by one', () => {
    fc.assert(
      fc.property(setting, (made) => {
        const { job, splice, anew } = made;
        const quantity = job.quote.quantities[0]!;
        const all = evensOf(made);
        const frames = bruteOf((at) => exactOf(anew, job, at) - exactOf(splice, job, at));
        const joints = bruteOf(
          (at) =>
            exactOf(anew, job, quantity) -
            exactOf(withJoints(splice, { times: at / 3, welds: 4, pads: 0, legs: null }), job, quantity),
        );
        for (const [by, brute] of [
          ['frames', frames],
          ['joints', joints],
        ] as const) {
          const found = all.find((one) => one.by === by);
          if (found === undefined) continue;
          expect(found.way).toBe(brute.first);
          if (brute.at !== null) expect(found.at?.value).toBe(brute.at);
          else expect(found.at === null || found.at.value >= CLOSELY).toBe(true);
          if (brute.again) expect(found.wavers).toBe(true);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('an order that changes to and fro is told as such', () => {
    const all = fc.sample(setting, { numRuns: 60, seed: 7 }).flatMap(evensOf);
    const wavering = all.filter(({ wavers }) => wavers);
    expect(wavering.length).toBeGreaterThan(0);
    for (const one of wavering) {
      const said = breakEvenWords(one, String);
      expect(said).toContain(`cheaper up to ${String(one.at!.value)} `);
      expect(said).toContain('above that it goes by how bars and bottles come out');
    }
    const plain = all.filter(({ at, wavers }) => at !== null && !wavers);
    for (const one of plain) expect(breakEvenWords(one, String)).not.toContain('bottles');
  });

  it('no sentence says of the prices as they are now what is not so', () => {
    fc.assert(
      fc.property(setting, (made) => {
        const { job, splice, anew } = made;
        const quantity = job.quote.quantities[0]!;
        const [own, other] = [costOf(splice, job, quantity), costOf(anew, job, quantity)];
        for (const { by, way, other: above, at, wavers, now, cheaper } of evensOf(made)) {
          if (own !== other) expect([by, cheaper]).toEqual([by, own < other ? 'splice-fewest' : 'new-frame']);
          // below an offer it is the other that is cheaper
          const [below, beyond] = by === 'offer' && at !== null ? [above, way] : [way, above];
          const said = at === null || now.value <= at.value ? below : wavers ? null : beyond;
          if (own !== other && said !== null) expect([by, said]).toEqual([by, cheaper]);
        }
      }),
      { numRuns: 80 },
    );
  });

  it('the quoted price decides: an axis that would contradict it is left out', () => {
    const made = fc.sample(setting, { numRuns: 40, seed: 7 });
    let turnedRound = 0;
    for (const one of made) {
      const works = [
        { scope: 'splice-fewest' as WayKey, quantities: one.splice },
        { scope: 'new-frame' as WayKey, quantities: one.anew },
      ];
      // as if a layout that is kept made what is dearer by first fit the cheaper one
      const told = evensOf(one).find(({ by }) => by === 'frames');
      if (told === undefined || told.wavers) continue;
      const options = works.map(({ scope }) => ({ scope, cost: scope === told.cheaper ? 2000 : 1000 }));
      const turned = breakEvens({ job: one.job, works, legs: null, options });
      expect(turned.some(({ by }) => by === 'frames')).toBe(false);
      turnedRound += 1;
    }
    expect(turnedRound).toBeGreaterThan(10);
  });
});
