import {
  QUOTE_GROUPS,
  type BreakEven,
  type GasChoice,
  type OwnTime,
  type QuoteLine,
  type QuoteOption,
  type QuotePlan,
} from '../../server/plan/quote.ts';
import type { Figure } from '../../server/plan/figure.ts';
import { figure } from './fixture-figure.ts';

/** A line made by hand; what is not given is open. */
export const line = (
  key: QuoteLine['key'],
  quantity: Figure | null,
  rate: number | null,
  change: Partial<QuoteLine> = {},
): QuoteLine => ({
  key,
  of: '',
  size: null,
  quantity,
  rate,
  rateUnit: 'minor',
  rateField: '/rates/fillerPerKilogram/value',
  missing: rate === null ? ['/rates/fillerPerKilogram/value'] : [],
  example: false,
  since: '2026-03-01',
  amount: quantity === null || rate === null ? null : Math.round(quantity.value * rate),
  parts: [],
  ...change,
});

/** A percentage of an amount. */
const percent = (key: QuoteLine['key'], of: number, rate: number): QuoteLine =>
  line(key, figure(of, 'minor'), rate, { rateUnit: 'percent', amount: Math.round((of * rate) / 100) });

const TAX = 20;

const sum = (lines: readonly { amount: number | null }[]): number =>
  lines.reduce((all, { amount }) => all + (amount ?? 0), 0);

/** An option of the lines given, with overhead, margin, rounding and tax on top, for each of some quantities. */
export function option(
  scope: QuoteOption['scope'],
  bought: readonly QuoteLine[],
  change: Partial<QuoteOption> = {},
  quantities: readonly number[] = [1],
): QuoteOption {
  const [first = 1] = quantities;
  const priced = (times: number): QuoteLine[] => {
    const own = bought.map((one) => ({ ...one, amount: one.amount === null ? null : one.amount * times }));
    const cost = sum(own);
    const overhead = percent('overhead', cost, 10);
    const margin = percent('margin', cost + (overhead.amount ?? 0), 15);
    const above = [overhead, margin];
    const net = cost + sum(above);
    const rounding = line('rounding', figure(net, 'minor'), null, { amount: (100 - (net % 100)) % 100, missing: [] });
    return [...own, ...above, rounding, percent('tax', net + (rounding.amount ?? 0), TAX)];
  };
  const totals = (lines: readonly QuoteLine[]) => {
    const net = sum(lines.filter(({ key }) => key !== 'tax'));
    const total = sum(lines);
    return { net, tax: total - net, total };
  };
  const lines = priced(first);
  const { net } = totals(lines);
  const fifth = Math.floor(net / QUOTE_GROUPS.length);
  return {
    scope,
    offered: true,
    lines,
    open: lines.flatMap(({ amount }, index) => (amount === null ? [index] : [])),
    examples: lines.filter(({ example }) => example).length,
    cost: sum(bought) * first,
    ...totals(lines),
    groups: QUOTE_GROUPS.map((group, index) => ({ group, amount: index === 0 ? net - 4 * fifth : fifth })),
    breaks: quantities.map((quantity) => {
      const these = priced(quantity);
      const all = totals(these);
      return {
        quantity,
        lines: these.map(({ key, of, amount }) => ({ key, of, amount })),
        open: these.filter(({ amount }) => amount === null).length,
        ...all,
        netEach: Math.round(all.net / quantity),
        totalEach: Math.round(all.total / quantity),
      };
    }),
    minutes: figure(312, 'min'),
    ...change,
  };
}

const gas = (extent: GasChoice['extent'], joints: GasChoice['joints'], chosen: boolean): GasChoice => ({
  extent,
  joints,
  chosen,
  stops: extent === 'dams' && joints === 'together' ? ['width-under-tube'] : [],
  fillings: figure(chosen ? 1 : 4, 'count'),
  minutes: figure(chosen ? 42 : 88.5, 'min'),
  gas: figure(chosen ? 0.31 : 0.74, 'm3'),
  bottles: figure(1, 'count'),
  changes: figure(0, 'count'),
  cost: chosen ? figure(6120, 'minor') : null,
});

const even = (by: BreakEven['by'], at: number | null, now: number): BreakEven => ({
  by,
  way: 'splice-fewest',
  other: 'new-frame',
  at: at === null ? null : figure(at, by === 'joints' || by === 'frames' ? 'count' : 'minor'),
  wavers: false,
  now: figure(now, by === 'joints' || by === 'frames' ? 'count' : 'minor'),
  cheaper: 'splice-fewest',
});

const own = (operation: OwnTime['operation'], entries: number): OwnTime => ({
  operation,
  entries,
  setUp: figure(14, 'min', entries > 1 ? 3.2 : null),
  each: figure(7.5, 'min', entries > 1 ? 1.4 : null),
  ratio: entries > 1 ? figure(1.21, 'ratio', 0.1) : null,
});

/** Lines of a splice: tube, gas, filler without a rate, welding, grinding without a time. */
export const splice = (): QuoteLine[] => [
  line('tube', figure(3.1, 'm'), 1450, {
    of: '38.1 × 1.7 316L',
    size: { outsideDiameter: 38.1, wall: 1.7, grade: '316L' },
    parts: [
      { key: 'piece', name: 'hoop', value: 2080, unit: 'mm' },
      { key: 'piece', name: 'crossbar 1', value: 910, unit: 'mm' },
    ],
  }),
  line('gas', figure(0.1, 'm3'), 1100),
  line('filler', figure(0.004, 'kg'), null),
  line('weld', figure(0.5, 'h'), 6200),
  line('machine', figure(0.5, 'h'), 900, { of: 'weld' }),
  line('finish', null, 5800, { missing: ['/rates/labour/finish/each/value'] }),
];

export const quotePlan = (options: QuoteOption[], change: Partial<QuotePlan> = {}): QuotePlan => ({
  scope: options[0]?.scope ?? 'frame',
  currency: 'EUR',
  minorDigits: 2,
  date: '2026-11-02',
  validUntil: '2026-12-02',
  options,
  gas: [gas('whole-frame', 'together', true), gas('whole-frame', 'one-by-one', false), gas('dams', 'together', false)],
  breakEven: [even('joints', 6.4, 2), even('labour', 9150, 6200), even('offer', 48000, 51000), even('frames', null, 1)],
  own: [own('weld', 4), own('finish', 1)],
  planned: [],
  legs: null,
  ...change,
});

/** A quote of two ways with open lines. */
export const quote = (): QuotePlan =>
  quotePlan([
    option('splice-fewest', splice(), {}, [1, 5, 20]),
    option('new-frame', [line('tube', figure(6, 'm'), 1450), line('bend', figure(1.5, 'h'), 5000)], {}, [1, 5, 20]),
  ]);
