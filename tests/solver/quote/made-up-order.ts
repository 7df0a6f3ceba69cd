import { newJob } from '../../../server/job/default-job.ts';
import type { SettledJob } from '../../../server/job/job.ts';
import type { OperationRate, OwnValue, Rates } from '../../../server/job/rates.ts';
import { figure, input } from '../../../server/solver/figure.ts';
import { byOperation } from '../../../server/solver/quote/operations.ts';
import { priceOf, type PricedLines } from '../../../server/solver/quote/price-of.ts';
import type { Quantities } from '../../../server/solver/quote/quantities.ts';

export const own = (value: number | null, example = false): OwnValue => ({ value, since: '2026-11-02', example });

export const operation = (times: {
  setUp?: number | null;
  each?: number | null;
  perMetre?: number | null;
}): OperationRate => ({
  hour: own(5000),
  machine: null,
  setUp: own(times.setUp ?? 0),
  each: own(times.each ?? 0),
  perMetre: own(times.perMetre ?? 0),
});

/** A piece of tube as sawn [mm], 40 × 2 of 316L. */
export const piece = (name: string, length: number): Quantities['pieces'][number] => ({
  kind: 'member',
  of: name,
  part: 1,
  parts: 1,
  name,
  field: '/frame',
  outsideDiameter: 40,
  wall: 2,
  grade: '316L',
  length: figure(length, 'mm', 'L', [input('L', 'length', length, 'mm')], ['typed']),
  count: 1,
});

const NONE = byOperation(() => 0);

/** One hoop of 2 m with two bends, sawn off at both ends, welded twice in one filling. */
export const SOME: Quantities = {
  pieces: [piece('hoop', 2000)],
  counts: { ...NONE, bend: 2, cut: 4, fit: 2, purge: 1, weld: 2, finish: 2 },
  metres: { ...NONE, bend: 2, cut: 0.5, fit: 0.25, weld: 0.25, finish: 0.25 },
  process: { ...NONE, purge: 4, weld: 2.5, finish: 12 },
  purgeGas: 300,
  torchGas: 100,
  filler: 12,
  welds: 2,
  anew: true,
  parts: {
    gas: [
      { key: 'purge', name: '', value: 300, unit: 'L' },
      { key: 'torch', name: '', value: 100, unit: 'L' },
    ],
    weld: [{ key: 'arc', name: '', value: 2.5, unit: 'min' }],
  },
};

const { rates: EXAMPLES, ...REST } = newJob('straight');

/** Rates of a made-up shop; nothing of them is an example. */
export const TYPED: Rates = {
  ...EXAMPLES,
  tubes: [{ size: null, by: 'metre', perMetre: own(1500), barLength: 6000, perBar: own(9000) }],
  waste: own(10),
  remnantCredit: own(50),
  gas: { by: 'used', perCubicMetre: own(1200), perBottle: own(6000), restOfBottle: own(0), rentPerDay: own(50) },
  fillerPerKilogram: own(2500),
  abrasivesPerWeld: own(200),
  labour: {
    bend: { ...operation({ setUp: 20, each: 5, perMetre: 1 }), machine: own(1500) },
    cut: operation({ setUp: 10, each: 5 }),
    fit: operation({ setUp: 15, each: 10 }),
    purge: operation({ setUp: 10, each: 5 }),
    bottle: operation({ each: 10 }),
    weld: operation({ setUp: 10, each: 5 }),
    finish: operation({ setUp: 10, each: 5 }),
  },
  outside: { setUp: own(5000), perBend: own(1500), least: own(8000) },
  travel: { perKilometre: own(50), hour: own(5000) },
  overhead: own(10),
  margin: own(20),
  marginOn: 'price',
  tax: own(19),
  roundTo: 100,
};

export type Changes = {
  readonly rates?: Partial<Rates>;
  readonly quote?: Partial<SettledJob['quote']>;
  readonly stock?: Partial<SettledJob['stock']>;
  readonly bottle?: Partial<SettledJob['purge']['bottle']>;
};

/** A job of that shop, to which its welders go twice. */
export const jobWith = ({ rates, quote, stock, bottle }: Changes = {}): SettledJob => ({
  ...REST,
  closing: { ...REST.closing, shrinkage: 0 },
  rates: { ...TYPED, ...rates },
  purge: { ...REST.purge, bottle: { ...REST.purge.bottle, ...bottle } },
  stock: { ...REST.stock, ...stock },
  quote: { ...REST.quote, travel: { trips: 2, kilometres: 30, hours: 1.5 }, ...quote },
});

export const priced = (changes: Changes = {}, quantity = 1, quantities: Quantities = SOME): PricedLines =>
  priceOf({ quantities, job: jobWith(changes), quantity });

/** Amounts by key, `machine of bend` where a line is of something. */
export const amounts = ({ lines }: Pick<PricedLines, 'lines'>): Record<string, number | null> =>
  Object.fromEntries(
    lines.map(({ key, of, amount }) => [key === 'machine' ? `${key} of ${of}` : key, amount] as const),
  );
