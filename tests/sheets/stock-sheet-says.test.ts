import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { StockPlan } from '../../server/plan/stock.ts';
import type { Page } from '../../server/sheets/page.ts';
import { makeJob, makePlan } from './fixture.ts';
import { bar, SAW, sizeLayout, stock } from './fixture-stock.ts';
import { figure } from './fixture-figure.ts';
import { pagesOf, saidOn } from './laid-pages.ts';

const pages = (plan: StockPlan = stock(), job: Job = makeJob()): readonly Page[] =>
  pagesOf('stock')({ ...makePlan(), stock: plan }, job);
const said = (plan?: StockPlan, job?: Job): string => pages(plan, job).map(saidOn).join(' ');

describe('what the stock sheet says', () => {
  it('says the saw of the job, which all bars are cut with', () => {
    const job = makeJob();
    const saw = { kerf: 2.5, endTrim: 10, leastRemnant: 300 };
    const layout = {
      found: 'proven',
      date: '',
      saw: SAW,
      currency: 'EUR',
      minorDigits: 2,
      bars: [],
      taken: null,
    } as const;
    const of = { ...stock(), sizes: [sizeLayout([bar(1, 6000, [['hoop', 2080]])], { from: 'kept' })] };
    expect(said(of, { ...job, stock: { ...job.stock, saw, layout: { ...layout, bars: [] } } })).toContain('2.5 mm');
  });

  it('says how the bars were found and whether fewer could do', () => {
    const [size] = stock().sizes;
    const found = (change: Parameters<typeof sizeLayout>[1], layout: Job['stock']['layout'] = null): string => {
      const job = makeJob();
      return said({ ...stock(), sizes: [sizeLayout(size!.bars, change)] }, { ...job, stock: { ...job.stock, layout } });
    };
    expect(found({ from: 'first-fit', proven: false, least: figure(1, 'count') })).toContain(
      'First fit: the fewest that could do 1.',
    );
    expect(found({ from: 'first-fit', proven: true })).toContain('proven: no fewer bars');
    const layout = {
      found: 'proven',
      date: '2026-11-20',
      saw: SAW,
      currency: 'EUR',
      minorDigits: 2,
      bars: [],
      taken: 12,
    } as const;
    const kept = found({ from: 'kept', proven: true }, { ...layout, bars: [] });
    for (const part of ['kept on 20 Nov 2026', 'no cheaper set of bars', 'as number 12']) expect(kept).toContain(part);
    expect(found({ from: 'kept', proven: false }, { ...layout, bars: [], taken: null })).toMatch(
      /best that was found in the time given.*Not yet taken/,
    );
  });

  it('says of a piece longer than any bar what to do', () => {
    const overlong = (joints: { from: number; to: number }[], offered: number | null, enough = true): string =>
      said(
        stock([
          {
            name: 'hoop',
            member: 'hoop',
            length: figure(7200, 'mm'),
            longest: figure(5990, 'mm'),
            joints,
            offered,
            enough,
          },
        ]),
      );
    const some = [{ from: 400, to: 900 }];
    expect(overlong(some, 812)).toMatch(/hoop is 7200.0 mm long; the longest bar is 5990.0 mm.*a joint at 812.0 mm/);
    expect(overlong(some, 812, false)).toMatch(/from several lengths: a first joint at 812.0 mm/);
    expect(overlong(some, null)).toMatch(/buy longer bars.*from 400.0 mm to 900.0 mm/);
    expect(overlong([], null)).toContain('No straight of it has room for a joint');
  });
});
