import { describe, expect, it } from 'vitest';
import { landingStage } from '../../../db/demo/landing-stage.ts';
import type { Job } from '../../../server/job/job.ts';
import type { LaidBar } from '../../../server/job/stock.ts';
import { plan } from '../../../server/solver/plan.ts';
import { own } from './made-up-order.ts';

const begun = landingStage();
/** The demo without a layout, a bar at 90.00. */
const demo: Job = {
  ...begun,
  stock: { ...begun.stock, layout: null },
  quote: { ...begun.quote, quantities: [1, 4] },
  rates: {
    ...begun.rates,
    remnantCredit: own(0),
    tubes: begun.rates.tubes.map((row) => ({ ...row, by: 'metre', barLength: 6000, perMetre: own(1500) })),
  },
};

/** The job with bars that are just for what is shown, one piece on each. */
function laidOut(job: Job, change: (bar: LaidBar) => LaidBar = (bar) => bar): Job {
  const bars = plan(job).stock!.pieces.map(({ name, length, count, outsideDiameter, wall, grade }) =>
    change({
      stock: '',
      name: '',
      remnant: false,
      ...{ outsideDiameter, wall, grade, length: 6000, price: 1, heat: '', times: count },
      pieces: [{ name, length: length.value, job: '' }],
    }),
  );
  const { currency, minorDigits } = job.rates;
  const layout = { found: 'proven', date: '', saw: job.stock.saw, currency, minorDigits, bars, taken: null } as const;
  return { ...job, stock: { ...job.stock, layout } };
}

const tube = (job: Job) => {
  const { quote, stock, findings } = plan(job);
  const lines = (scope: string) => quote!.options.find((one) => one.scope === scope)!;
  const sum = (of: readonly { key: string; amount: number | null }[]) =>
    of.filter(({ key }) => key === 'tube' || key === 'remnant-credit').map(({ amount }) => amount);
  return { quote: quote!, stock: stock!, findings, lines, sum };
};
const codes = ({ findings }: ReturnType<typeof tube>) => findings.map(({ code }) => code);

describe('bars that were laid out and kept', () => {
  it('price the tube of what is shown for the first quantity, whatever it is charged by, and nothing else', () => {
    const [loose, laid] = [tube(demo), tube(laidOut(demo))];
    const { scope } = laid.quote;
    const shown = laid.lines(scope);
    const bars = laid.stock.sizes.flatMap((size) => size.bars);
    expect(laid.stock.sizes.every(({ from }) => from === 'kept')).toBe(true);
    expect(bars.every(({ price }) => price === 9000)).toBe(true);
    expect(laid.sum(shown.lines)).toEqual(laid.stock.sizes.map(({ cost }) => cost!.value));
    expect(laid.sum(shown.breaks[0]!.lines)).toEqual(laid.sum(shown.lines));
    // the other quantity and the other ways as without
    expect(laid.sum(shown.breaks[1]!.lines)).toEqual(loose.sum(loose.lines(scope).breaks[1]!.lines));
    expect(laid.quote.options.length).toBeGreaterThan(1);
    for (const option of laid.quote.options)
      if (option.scope !== scope) expect(option.breaks).toEqual(loose.lines(option.scope).breaks);
    expect(laid.findings.filter(({ code }) => code === 'layout-one-way')).toMatchObject([
      { grade: 'note', field: '/stock/layout', data: { value: laid.quote.options.length } },
    ]);
    expect(codes(loose)).not.toContain('layout-one-way');
  });

  it('are told as examples where the price of a bar that is bought is one', () => {
    const tubes = demo.rates.tubes.map((row) => ({ ...row, perMetre: own(1500, true) }));
    const { lines, quote } = tube(laidOut({ ...demo, rates: { ...demo.rates, tubes } }));
    const [line] = lines(quote.scope).lines;
    expect(line).toMatchObject({ key: 'tube', rateField: '/stock/layout', example: true });
    const sure = tube(laidOut(demo));
    expect(sure.lines(sure.quote.scope).lines[0]).toMatchObject({ example: false });
  });

  it('leave no line open without a word: the rate, the bar of the stock, or the credit', () => {
    const tubes = demo.rates.tubes.map((row) => ({ ...row, perMetre: own(null), perBar: own(null) }));
    const unrated = tube(laidOut({ ...demo, rates: { ...demo.rates, tubes } }));
    expect(unrated.findings.filter(({ code }) => code === 'rate-open').map(({ field }) => field)).toContain(
      '/rates/tubes/0/perMetre/value',
    );
    const ratesOpen = { ...demo, rates: { ...demo.rates, tubes } };
    const job = laidOut(ratesOpen, (bar) => ({ ...bar, stock: 'b-1', name: 'rack 2', price: null }));
    const unpriced = tube(job);
    expect(unpriced.lines(unpriced.quote.scope).lines[0]!.amount).toBeNull();
    expect(unpriced.lines(unpriced.quote.scope).lines[0]!.missing).toContain('/stock/layout');
    const [open] = unpriced.findings.filter(({ code }) => code === 'layout-price-open');
    expect(open).toMatchObject({ data: { name: 'rack 2' }, wayOut: { field: '/stock/layout', value: null } });
    expect(codes(tube({ ...job, stock: { ...job.stock, layout: null } }))).not.toContain('layout-price-open');
    const uncredited = tube({ ...laidOut(demo), rates: { ...demo.rates, remnantCredit: own(null) } });
    expect(uncredited.findings.filter(({ code }) => code === 'rate-open').map(({ field }) => field)).toContain(
      '/rates/remnantCredit/value',
    );
  });

  it('go by the rates of the day where the rack has no price, examples told; a remnant by nothing, and that is said', () => {
    const tubes = demo.rates.tubes.map((row) => ({ ...row, perMetre: own(1500, true) }));
    const stocked = { stock: 'b-1', name: 'rack 2', price: null };
    const { lines, quote } = tube(
      laidOut({ ...demo, rates: { ...demo.rates, tubes } }, (bar) => ({ ...bar, ...stocked })),
    );
    expect(lines(quote.scope).lines[0]).toMatchObject({ example: true, amount: 18_000 });
    const free = tube(laidOut(demo, (bar) => ({ ...bar, ...stocked, remnant: true })));
    expect(free.lines(free.quote.scope).lines[0]!.amount).toBe(0);
    expect(free.findings.filter(({ code }) => code === 'layout-remnant-free')).toMatchObject([
      { grade: 'note', data: { name: 'rack 2', value: 2 } },
    ]);
  });

  it('are stale for another way: that is priced by the rates, and the finding says so', () => {
    const laid = laidOut(demo);
    const others = plan(laid).quote!.options.map(({ scope }) => scope);
    const other = others.find((scope) => scope === 'new-frame')!;
    const shown = tube({ ...laid, closing: { ...laid.closing, way: other } });
    expect(codes(shown)).toContain('layout-stale');
    expect(codes(shown)).not.toContain('layout-one-way');
  });
});
