import { describe, expect, it } from 'vitest';
import { parseStockBar } from '../../server/job/stock-row.ts';
import {
  freshTexts,
  problemsElsewhere,
  readBar,
  textsOf,
  troublesFrom,
  usualDigits,
} from '../../web/state/stock-form.ts';
import { rackBar } from './made-up-stock.ts';

const mm = { length: 'mm', fraction: 16 } as const;
const inch = { length: 'inch', fraction: 16 } as const;
const good = textsOf(rackBar(), mm);
const troublesOf = (given: Partial<typeof good>) => {
  const read = readBar({ ...good, ...given }, mm);
  return read.ok ? {} : read.troubles;
};

describe('a row of the stock as it is typed', () => {
  it('comes back as it was, in either unit and any currency', () => {
    for (const bar of [
      rackBar(),
      rackBar({ price: null, heat: 'H 12', remnant: true, count: 0 }),
      rackBar({ price: 9000, currency: 'JPY' }),
      rackBar({ price: 12_345, currency: 'KWD', outsideDiameter: 38.1, wall: 1.651, length: 6096 }),
    ])
      for (const units of [mm, inch]) expect(readBar(textsOf(bar, units), units, bar)).toEqual({ ok: true, bar });
    const typed = { ...textsOf(rackBar(), inch), wall: '0.065' };
    expect(readBar(typed, inch, rackBar())).toMatchObject({ ok: true, bar: { wall: 1.651, length: 6000 } });
    expect(['EUR', 'JPY', 'KWD'].map(usualDigits)).toEqual([2, 0, 3]);
  });

  it('reads inches in a list of millimetres', () => {
    const read = readBar({ ...good, outsideDiameter: '1 1/2 in', length: "20'" }, mm);
    expect(read).toMatchObject({ ok: true, bar: { outsideDiameter: 38.1, length: 6096 } });
  });

  it('begins with the size that is worked on', () => {
    const fresh = freshTexts({ outsideDiameter: 38.1, wall: 1.65, grade: '316L' }, 'EUR', mm);
    expect(fresh).toMatchObject({ outsideDiameter: '38.1', wall: '1.65', grade: '316L', length: '', count: '1' });
    expect(freshTexts(null, 'EUR', mm).outsideDiameter).toBe('');
  });

  it('refuses less than nothing, parts of a bar, and what is no number, at its field', () => {
    for (const count of ['-1', '1.5']) expect(troublesOf({ count })).toEqual({ count: 'A whole number, 0 or more.' });
    expect(Object.keys(troublesOf({ count: 'two', length: 'long', price: '-5' }))).toEqual([
      'length',
      'count',
      'price',
    ]);
    expect(Object.keys(troublesOf({ currency: 'euro', grade: ' ' }))).toEqual(['currency', 'grade']);
    expect(troublesOf({ currency: 'eur' })).toEqual({});
    expect(Object.keys(troublesOf({ price: '9.555' }))).toEqual(['price']);
  });

  it('shows what the server refuses at the field that it speaks of', () => {
    const parsed = parseStockBar({ ...rackBar(), length: 90_000, wall: 30, more: 1 });
    const problems = parsed.ok ? [] : parsed.problems;
    expect(troublesFrom(problems).length).toContain('20000');
    expect(problemsElsewhere(problems)).toHaveLength(1);
    const thick = parseStockBar({ ...rackBar(), wall: 30 });
    expect(Object.keys(troublesFrom(thick.ok ? [] : thick.problems))).toEqual(['wall']);
  });
});
