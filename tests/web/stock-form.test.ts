import { describe, expect, it } from 'vitest';
import { parseStockBar } from '../../server/job/stock-row.ts';
import {
  freshTexts,
  moneyTypedLast,
  problemsElsewhere,
  readBar,
  textsInUnits,
  textsOf,
  troublesFrom,
} from '../../web/state/stock-form.ts';
import { draftNow, type BarDraft } from '../../web/state/stock-draft.ts';
import { rackBar } from './made-up-stock.ts';

const mm = { length: 'mm', fraction: 16 } as const;
const EUR = { currency: 'EUR', minorDigits: 2 };
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
      rackBar({ price: 9000, currency: 'JPY', minorDigits: 0 }),
      rackBar({ price: 12_345, currency: 'KWD', minorDigits: 3, outsideDiameter: 38.1, wall: 1.651, length: 6096 }),
    ])
      for (const units of [mm, inch]) expect(readBar(textsOf(bar, units), units, bar)).toEqual({ ok: true, bar });
    const typed = { ...textsOf(rackBar(), inch), wall: '0.065' };
    expect(readBar(typed, inch, rackBar())).toMatchObject({ ok: true, bar: { wall: 1.651, length: 6000 } });
  });

  it('counts its price in the digits that it says, whatever the currency', () => {
    const read = (price: string, minorDigits: string) => readBar({ ...good, price, minorDigits }, mm);
    expect(read('12', '0')).toMatchObject({ ok: true, bar: { price: 12, minorDigits: 0 } });
    expect(read('12.345', '3')).toMatchObject({ ok: true, bar: { price: 12_345, minorDigits: 3 } });
    for (const minorDigits of ['', '4', '1.5', '-1'])
      expect(Object.keys(troublesOf({ minorDigits }))).toContain('minorDigits');
  });

  it('is priced as the row that was typed last, and in hundredths where there is none', () => {
    const row = (savedAt: string, currency: string, minorDigits: number) => ({
      savedAt,
      document: rackBar({ currency, minorDigits }),
    });
    const rows = [row('2026-01-01', 'EUR', 2), row('2026-03-01', 'KWD', 3), row('2026-02-01', 'JPY', 0)];
    expect(moneyTypedLast(rows)).toEqual({ currency: 'KWD', minorDigits: 3 });
    expect(moneyTypedLast([])).toEqual({ currency: 'EUR', minorDigits: 2 });
  });

  it('reads inches in a list of millimetres', () => {
    const read = readBar({ ...good, outsideDiameter: '1 1/2 in', length: "20'" }, mm);
    expect(read).toMatchObject({ ok: true, bar: { outsideDiameter: 38.1, length: 6096 } });
  });

  it('goes on in other units where it was half typed in these', () => {
    const before = rackBar({ wall: 1.65 });
    const half = { ...textsOf(before, mm), length: '304.8', outsideDiameter: '2 in', count: 'tw' };
    const turned = textsInUnits(half, { typedIn: mm, units: inch, before });
    expect(turned).toMatchObject({ wall: textsOf(before, inch).wall, outsideDiameter: '2 in', count: 'tw' });
    expect(readBar({ ...turned, count: '2' }, inch, before)).toMatchObject({
      ok: true,
      bar: { wall: 1.65, length: 304.8, outsideDiameter: 50.8 },
    });
    expect(textsInUnits({ ...half, length: '6 or' }, { typedIn: mm, units: inch, before }).length).toBe('6 or');
    expect(textsInUnits(half, { typedIn: mm, units: mm, before })).toBe(half);
  });

  it('that was half typed goes on over its row, as that was; over a row that has gone it is a row to put on', () => {
    const row = { id: 'a', revision: 5, savedAt: 'then', document: rackBar() };
    const texts = { ...textsOf(rackBar(), mm), length: '5000' };
    const draft = { open: { id: 'a', revision: 4 }, texts, units: mm };
    const now = (bars: (typeof row)[], given: BarDraft = draft) => draftNow(given, { bars, units: mm, fresh: {} });
    expect(now([row])).toEqual(draft);
    expect(now([])).toEqual({ ...draft, open: 'bars' });
    expect(now([], { ...draft, texts: { ...texts, remnant: true } }).open).toBe('remnant');
    expect(now([], { ...draft, open: 'remnant' }).open).toBe('remnant');
  });

  it('begins with the size that is worked on', () => {
    const fresh = freshTexts({ outsideDiameter: 38.1, wall: 1.65, grade: '316L' }, EUR, mm);
    expect(fresh).toMatchObject({ outsideDiameter: '38.1', wall: '1.65', grade: '316L', length: '', count: '1' });
    expect(freshTexts(null, EUR, mm).outsideDiameter).toBe('');
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
