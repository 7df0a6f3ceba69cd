import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { RATES } from '../../server/job/default-rates.ts';
import { StockLayout } from '../../server/job/stock.ts';
import { problemsOf } from '../../server/job/validate.ts';
import { jobNames } from '../../server/nesting/job-names.ts';
import { nestingResult, type Nested } from '../../server/nesting/nesting-result.ts';
import { nestedTrouble, troubleAhead } from '../../server/nesting/nesting-trouble.ts';
import { sizesToCut, type NestedJob } from '../../server/nesting/sizes-to-cut.ts';
import type { CutPiece } from '../../server/plan/stock.ts';
import { figure } from '../../server/solver/figure.ts';
import { barShares } from '../../server/solver/stock/bar-shares.ts';
import { cut } from './cut-for-test.ts';

const { saw } = newJob('hoop').stock;

const piece = (name: string, length: number, count = 1): CutPiece => ({
  kind: 'member',
  of: name,
  part: 1,
  parts: 1,
  name,
  field: '/frame',
  outsideDiameter: 42.4,
  wall: 2,
  grade: '316L',
  length: figure(length, 'mm', 'L', [], ['typed']),
  count,
});

const rack = (count: number) => ({
  id: 'rack',
  revision: 1,
  savedAt: '2026-01-01T00:00:00.000Z',
  document: {
    name: 'rack',
    remnant: false,
    outsideDiameter: 42.4,
    wall: 2,
    grade: '316L',
    length: 6000,
    count,
    price: 7777,
    currency: 'EUR',
    minorDigits: 2,
    heat: 'A1',
  },
});

function solved(jobs: NestedJob[], stock: ReturnType<typeof rack>[] = []) {
  const sizes = sizesToCut({ jobs, stock, rates: RATES, saw });
  const credit = 30;
  const nested: Nested = { sizes, jobs, saw, currency: 'EUR', minorDigits: 2, credit, date: '2026-02-03', leftOut: [] };
  const found = sizes.map(({ task }) => cut(task).best);
  return { sizes, found, result: nestingResult(nested, found) };
}
const barsOf = ({ bars }: StockLayout): number => bars.reduce((sum, { times }) => sum + times, 0);

describe('jobs on the bars of others', () => {
  it('are called by their titles, and no two alike', () => {
    const named = (...titles: string[]) =>
      jobNames(titles.map((title, at) => ({ id: `abcdefgh-${String(at)}`, title })));
    expect(named('Rail', 'Gate ')).toEqual(['Rail', 'Gate']);
    expect(new Set(named('Rail', 'Rail', '', '', 'Rail (abcdefgh)')).size).toBe(5);
    expect(named('', 'Gate')).toEqual(['abcdefgh', 'Gate']);
    expect(
      jobNames([
        { id: '', title: '' },
        { id: 'x', title: '' },
      ]),
    ).toEqual(['1', 'x']);
    const long = named('L'.repeat(120), 'L'.repeat(120));
    expect(new Set(long).size).toBe(2);
    expect(long.every((name) => name.length <= 120)).toBe(true);
  });
});

describe('bars of several jobs', () => {
  const jobs: NestedJob[] = [
    { id: '', title: 'Rail', quantity: 7, pieces: [piece('hoop', 2811.4), piece('post', 733.3)] },
    { id: 'b', title: 'Gate', quantity: 5, pieces: [piece('hoop', 2400), piece('post', 733.3)] },
    { id: 'c', title: 'Gate (c)', quantity: 1, pieces: [piece('leg', 5500), piece('leg 2', 5600)] },
  ];
  const { result } = solved(jobs, [rack(100_000)]);

  it('are all there once, and each job has those that it is cut from, as it sees them', () => {
    expect(problemsOf(StockLayout, result.whole)).toEqual([]);
    expect(barsOf(result.whole)).toBe(result.sizes[0]!.bars);
    expect(result.layouts.map(({ id, title }) => [id, title])).toEqual([
      [null, 'Rail'],
      ['b', 'Gate'],
      ['c', 'Gate (c)'],
    ]);
    expect(result.layouts[0]!.layout).toEqual(result.layout);
    for (const { title, layout } of result.layouts) {
      expect(problemsOf(StockLayout, layout)).toEqual([]);
      const named = layout.bars.map((bar) => ({
        ...bar,
        pieces: bar.pieces.map((one) => ({ ...one, job: one.job === '' ? title : one.job })),
      }));
      expect(named).toEqual(result.whole.bars.filter(({ pieces }) => pieces.some(({ job }) => job === title)));
    }
    const alone = result.whole.bars.filter(({ pieces }) => pieces.every(({ job }) => job !== 'Rail'));
    expect(alone.length).toBeGreaterThan(0);
  });

  it('hold every piece of each as often as it is wanted', () => {
    for (const [index, { quantity, pieces }] of jobs.entries())
      for (const { name } of pieces) {
        const own = result.layouts[index]!.layout.bars.map(
          (bar) => bar.times * bar.pieces.filter((one) => one.job === '' && one.name === name).length,
        );
        expect(own.reduce((sum, count) => sum + count, 0)).toBe(quantity);
      }
  });

  it('are paid by each as its own plan reckons, and what all pay is what they cost less what comes back', () => {
    for (const [index, { layout }] of result.layouts.entries()) {
      const paid = layout.bars.reduce(
        (sum, bar) => sum + bar.times * (barShares(bar, layout.saw, 30)!.get('') ?? 0),
        0,
      );
      expect(result.shares[index]!.cost).toBe(paid);
    }
    const all = result.whole.bars.flatMap((bar) =>
      [...barShares(bar, saw, 30)!.values()].map((share) => share * bar.times),
    );
    const sum = all.reduce((total, share) => total + share, 0);
    expect(result.shares.reduce((total, { cost }) => total + cost!, 0)).toBe(sum);
  });
});

describe('many frames', () => {
  it('of a thousand, bars that are cut alike are one entry', () => {
    const { sizes, found, result } = solved(
      [{ id: '', title: 'Rail', quantity: 1000, pieces: [piece('hoop', 2811.4), piece('leg', 512.7, 2)] }],
      [rack(100_000)],
    );
    expect(sizes[0]!.sources[0]![0]!.count).toBe(3000);
    expect(nestedTrouble(sizes, found)).toBe('');
    expect(barsOf(result.layout)).toBeGreaterThan(500);
    expect(result.layout.bars.length).toBeLessThan(20);
    expect(result.whole).toEqual(result.layout);
  });

  it('are refused in words, and before anything is sought, where no layout could hold them', () => {
    const many = Array.from({ length: 900 }, (_, at) => piece(`rail ${String(at)}`, 2900 + at / 10));
    const jobs = [{ id: '', title: 'Rail', quantity: 1, pieces: many }];
    expect(troubleAhead(sizesToCut({ jobs, stock: [], rates: RATES, saw }))).toContain('A layout holds 400 bars');
    const few = [{ id: '', title: 'Rail', quantity: 1000, pieces: many.slice(0, 700) }];
    expect(troubleAhead(sizesToCut({ jobs: few, stock: [], rates: RATES, saw }))).toBe('');
    const tiny = solved([{ id: '', title: 'Rail', quantity: 1, pieces: [piece('ring', 5, 500)] }]);
    expect(nestedTrouble(tiny.sizes, tiny.found)).toContain('400 pieces on one');
  });
});
