import { describe, expect, it } from 'vitest';
import { Stock, type LaidBar, type StockBar, type StockLayout } from '../../server/job/stock.ts';
import type { StockRow } from '../../server/job/stock-row.ts';
import type { BarPlan, CutPiece, SizeLayout } from '../../server/plan/stock.ts';
import { sizeWords } from '../../server/language/size-words.ts';
import { NestingRequest } from '../../server/nesting/nesting.ts';
import { plan } from '../../server/solver/plan.ts';
import { barPlan } from '../../server/solver/stock/bar-plan.ts';
import { MOST_TOGETHER } from '../../web/state/job-picker.svelte.ts';
import { addressOf, placeOf } from '../../web/state/route.svelte.ts';
import { stageFigure, stageOf, STAGES } from '../../web/state/stages.ts';
import { freshBarJoint, MOST_BAR_JOINTS } from '../../web/state/stock-joints.ts';
import { barsOfLayout, barsOfPlan, labelThatFits, piecesTold } from '../../web/state/stock-picture.ts';
import { isOtherGrade, ofSizes, sortedStock } from '../../web/state/stock-sizes.ts';
import { barNumbers, barWords, foundWords, pieceFor } from '../../web/state/stock-words.ts';
import { wayOutWords } from '../../web/state/way-out-words.ts';
import { demo } from './planned-stage.ts';
import { madeUpFigure, rackBar } from './made-up-stock.ts';

const mm = { length: 'mm', fraction: 16 } as const;
const row = (id: string, given: Partial<StockBar>): StockRow => ({
  id,
  revision: 1,
  savedAt: 'then',
  document: rackBar(given),
});

const bar = (number: number, given: Partial<BarPlan> = {}): BarPlan => ({
  number,
  times: 1,
  stock: '',
  name: '',
  remnant: false,
  length: 6000,
  heat: '',
  price: 9000,
  endTrim: 5,
  pieces: [
    { name: 'hoop', job: '', from: 5, to: 2005 },
    { name: 'crossbar 1', job: '', from: 2007, to: 3007 },
  ],
  offcut: madeUpFigure(6000 - 3007 - 2, 'mm'),
  kept: true,
  ...given,
});

describe('the stage in the index', () => {
  it('stands between the legs and the price, and counts the bars', () => {
    expect(STAGES.slice(STAGES.indexOf('level'))).toEqual(['level', 'stock', 'price', 'sheets']);
    expect(['/stock/saw/kerf', '/stock/joints/0', '/quote/quantities/0', '/log'].map(stageOf)).toEqual([
      'stock',
      'stock',
      'price',
      'price',
    ]);
    const made = plan(demo);
    const withBars = (count: number) => ({
      ...made,
      stock: { pieces: [], overlong: [], sizes: [{ bars: count === 0 ? [] : [bar(1, { times: count })] }] },
    });
    const said = [0, 1, 3].map((count) => stageFigure('stock', demo, withBars(count) as unknown as typeof made));
    expect(said).toEqual(['', '1 bar', '3 bars']);
    expect(stageFigure('stock', demo, { ...made, stock: null })).toBe('');
  });

  it('has a page of its own', () => {
    expect(placeOf('#/stock')).toEqual({ kind: 'stock' });
    expect(addressOf({ kind: 'stock' })).toBe('#/stock');
    expect([addressOf({ kind: 'jobs' }), addressOf({ kind: 'first' })]).toEqual(['#/jobs', '#/']);
  });
});

describe('bars as they are drawn', () => {
  it('draws the pieces of a plan where it says, bars cut alike once', () => {
    const drawn = barsOfPlan([bar(1, { times: 2 }), bar(3, { stock: 'a', name: 'Rack 3', heat: 'H 1' })]);
    expect(drawn.map(({ count, first, last }) => [count, first, last])).toEqual([
      [2, 1, 2],
      [1, 3, 3],
    ]);
    const [first, second] = drawn;
    expect(first!.pieces.map(({ from, to }) => [from, to])).toEqual([
      [5, 2005],
      [2007, 3007],
    ]);
    expect(first!.offcut).toEqual({ from: 3009, kept: true });
    expect(drawn.map(barNumbers)).toEqual(['Bars 1 to 2, 2 alike', 'Bar 3']);
    expect(barWords(first!, mm)).toBe('6000.0 mm, to be bought');
    expect(barWords(second!, mm)).toBe('6000.0 mm, from stock “Rack 3”, heat H 1');
  });

  it('draws what was found as the plan draws it once it is kept', () => {
    const saw = { kerf: 2, endTrim: 5, leastRemnant: 300 };
    const laid = (length: number, lengths: readonly number[], more: Partial<LaidBar> = {}): LaidBar => ({
      stock: 'a',
      name: 'Rack 3',
      remnant: false,
      outsideDiameter: 38.1,
      wall: 1.65,
      grade: '316L',
      length,
      price: 9000,
      heat: 'H 1',
      times: 1,
      pieces: lengths.map((each, at) => ({ name: `piece ${String(at)}`, length: each, job: at === 1 ? 'Other' : '' })),
      ...more,
    });
    const bars = [
      laid(6000, [2000, 1000], { times: 3 }),
      laid(3200, [3000], { stock: '', name: '', heat: '' }),
      laid(1005, [1000]),
      laid(1006.5, [1000]),
      // keeps just what is kept, and just less
      laid(1307, [1000]),
      laid(1306.9, [1000], { remnant: true }),
    ];
    let next = 1;
    const planned = bars.map((one) => {
      const made = barPlan(next, one, saw);
      next += one.times;
      return made;
    });
    expect(barsOfLayout({ saw, bars })).toEqual(barsOfPlan(planned));
    expect(barsOfLayout({ saw, bars }).map(({ offcut }) => offcut?.kept ?? null)).toEqual([
      true,
      false,
      null,
      null,
      true,
      false,
    ]);
  });

  it('tells like pieces once, and labels by the room there is', () => {
    const pieces = [0, 1, 2].map((at) => ({ name: 'leg', job: '', from: at * 702, to: at * 702 + 700 }));
    const told = piecesTold([...pieces, { name: 'leg', job: 'Other', from: 3000, to: 3700 }]);
    expect(told.map(({ count, job }) => [count, job])).toEqual([
      [3, ''],
      [1, 'Other'],
    ]);
    const labels = ['hoop 2811.4 mm', 'hoop'];
    expect([300, 60, 8].map((room) => labelThatFits(labels, room))).toEqual(['hoop 2811.4 mm', 'hoop', '']);
  });
});

describe('words of the stock', () => {
  const size = (given: Partial<SizeLayout>): SizeLayout =>
    ({
      from: 'first-fit',
      proven: false,
      bars: [bar(1), bar(2)],
      least: madeUpFigure(1, 'count'),
      ...given,
    }) as SizeLayout;
  const layout = { found: 'proven', date: '2026-11-26' } as StockLayout;

  it('says how good the bars are, and never more than is proven', () => {
    expect(foundWords(size({ proven: true }), null)).toContain('2 bars. Fewer bars of this length cannot do.');
    expect(foundWords(size({}), null)).toContain('2 bars. At least 1 are needed');
    expect(foundWords(size({ from: 'kept', proven: true, least: null }), layout)).toBe(
      '2 bars as laid out: proven the cheapest. Found on 2026-11-26.',
    );
    expect(foundWords(size({ from: 'kept', least: null }), { ...layout, date: '' })).toContain('not proven');
    expect(foundWords(size({ from: 'none', bars: [] }), null)).toContain('No bar is long enough');
  });

  it('says what each piece is for', () => {
    const piece = (kind: CutPiece['kind']) => ({ kind, of: 'hoop', part: 1, parts: 2 }) as CutPiece;
    expect((['member', 'length', 'let-in', 'leg'] as const).map((kind) => pieceFor(piece(kind)))).toEqual([
      'a whole member',
      'length 1 of 2 of hoop, welded before it is bent',
      'let in at joint hoop',
      'a leg',
    ]);
  });

  it('says the joint that a finding offers', () => {
    const value = [{ member: 'hoop', station: 1200 }];
    expect(wayOutWords({ field: '/stock/joints', value }, demo)).toBe('hoop: 1200 mm');
  });
});

describe('the list of the shop', () => {
  const rows = [
    row('a', { name: 'short', length: 1000 }),
    row('b', { name: 'other size', outsideDiameter: 42.4 }),
    row('c', { name: 'Rack 10' }),
    row('d', { name: 'rack 2' }),
    row('e', { name: 'offcut', remnant: true }),
    row('f', { name: 'other grade', grade: '304' }),
  ];
  const own = { outsideDiameter: 38.1, wall: 1.65, grade: '316L' };

  it('stands by size, grade and length, as a person sorts', () => {
    expect(sortedStock(rows).map(({ id }) => id)).toEqual(['f', 'd', 'c', 'e', 'a', 'b']);
  });

  it('shows those of the size that is worked on, and marks another grade', () => {
    expect(ofSizes(rows, [own]).map(({ id }) => id)).toEqual(['a', 'c', 'd', 'e', 'f']);
    expect(rows.filter(({ document }) => isOtherGrade(document, [own])).map(({ id }) => id)).toEqual(['f']);
    expect(isOtherGrade(rows[5]!.document, [])).toBe(false);
    expect(sizeWords(own, mm)).toBe('38.1 × 1.65 mm, 316L');
  });
});

describe('limits of the stock', () => {
  it('are those of the job and of the server', () => {
    expect(Stock.properties.joints).toMatchObject({ maxItems: MOST_BAR_JOINTS });
    expect(NestingRequest.properties.with).toMatchObject({ maxItems: MOST_TOGETHER });
  });
});

describe('a fresh joint between bars', () => {
  const { frame } = plan(demo);
  const piece = { name: 'hoop', member: 'hoop', joints: [{ from: 300, to: 500 }], offered: 420 } as never;

  it('stands where the plan offers one, else where one may stand, else where it is to be typed', () => {
    expect(freshBarJoint(frame, [piece])).toEqual({ member: 'hoop', station: 420 });
    expect(freshBarJoint(frame, [{ ...(piece as object), offered: null } as never])).toEqual({
      member: 'hoop',
      station: 300,
    });
    expect(freshBarJoint(frame, [])).toEqual({ member: frame!.members[0]!.name, station: 0 });
    expect(freshBarJoint(null, [])).toBeNull();
  });
});
