import { describe, expect, it } from 'vitest';
import { barShares } from '../../../server/solver/stock/bar-shares.ts';
import { takingOffcuts } from '../../../server/solver/stock/taking-offcuts.ts';
import { barOf, byBar, layoutOf, SAW, stockJob } from './made-up-stock.ts';

const { rates } = stockJob();
const credited = (value: number | null, currency = 'EUR') => ({
  ...rates,
  currency,
  remnantCredit: { value, since: '', example: false },
});

describe('offcuts that come back when bars are taken', () => {
  const bar = barOf({ hoop: 2000, bar: 800 }, { stock: 'b-1', price: 8999, times: 3 });

  it('cost what the job was credited for each, one row for bars cut alike', () => {
    const layout = layoutOf([bar]);
    const { offcuts, overfull } = takingOffcuts(layout, credited(33));
    expect(overfull).toBeNull();
    expect(offcuts).toMatchObject([{ remnant: true, count: 3, length: 3184, currency: 'EUR', minorDigits: 2 }]);
    // 8999 − what the job pays of the bar
    expect(offcuts[0]!.price).toBe(8999 - barShares(bar, SAW, 33)!.get('')!);
    expect(takingOffcuts(layout, credited(0)).offcuts[0]!.price).toBe(0);
  });

  it('of bars that are bought go by what they cost today', () => {
    const layout = layoutOf([{ ...bar, stock: '', price: 1 }]);
    const tubes = [byBar(6000)];
    // 6000 × 3184/6000 × 1/2
    expect(takingOffcuts(layout, { ...credited(50), tubes }).offcuts[0]!.price).toBe(1592);
    // a bar of the stock without a price of its own likewise
    const unpriced = layoutOf([{ ...bar, price: null }]);
    expect(takingOffcuts(unpriced, { ...credited(50), tubes }).offcuts[0]!.price).toBe(1592);
  });

  it('have no price where nobody knows the credit, the price, or both in one currency', () => {
    const price = (...asked: Parameters<typeof takingOffcuts>) => takingOffcuts(...asked).offcuts[0]!.price;
    expect(price(layoutOf([bar]))).toBeNull();
    expect(price(layoutOf([bar]), credited(null))).toBeNull();
    expect(price(layoutOf([bar]), credited(50, 'GBP'))).toBeNull();
    expect(price(layoutOf([{ ...bar, price: null, remnant: true }]), credited(50))).toBeNull();
  });
});
