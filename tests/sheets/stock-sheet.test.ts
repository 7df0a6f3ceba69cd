import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { formatLength } from '../../server/language/length-format.ts';
import type { BarPlan, StockPlan } from '../../server/plan/stock.ts';
import { onTape } from '../../server/sheets/bars-on-tape.ts';
import { around, type Drawn, type Rectangle } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';
import { renderSheet } from '../../server/sheets/render-sheet.ts';
import { makeJob, makePlan } from './fixture.ts';
import { bar, piece, SAW, sizeLayout, stock } from './fixture-stock.ts';
import { ofRole, pagesOf, saidOn } from './laid-pages.ts';
import { covered, crossed, outside } from './layout-faults.ts';
import { readPdf } from './read-pdf.ts';

/** What a drawn length may differ from its scale [mm on paper]. */
const TOLERANCE = 0.05;

const pages = (plan: StockPlan = stock(), job: Job = makeJob()): readonly Page[] =>
  pagesOf('stock')({ ...makePlan(), stock: plan }, job);
const said = (plan?: StockPlan, job?: Job): string => pages(plan, job).map(saidOn).join(' ');

const boxes = (drawn: readonly Drawn[]): Rectangle[] => drawn.map(({ points }) => around(points));

/** Whole bars on a page, from the top: thin boxes as thick as a bar is drawn. */
const THICK = 9;
const wholeBars = (page: Page): Rectangle[] =>
  boxes(ofRole(page, 'frame').filter(({ closed, stroke }) => closed && stroke?.width === 0.18)).filter(
    ({ height }) => Math.abs(height - THICK) < 1e-6,
  );

/** 1 over the scale that a page says in its title block: '1:25'. */
const factors = (page: Page): number[] =>
  [...(/ scale ((?:1:\d+(?:, )?)+)/.exec(saidOn(page))?.[1] ?? '').matchAll(/1:(\d+)/g)].map(
    ([, times]) => 1 / Number(times),
  );

/** Bars drawn alone, so that their page has one scale. */
const alone = (bars: BarPlan[], change: Partial<StockPlan> = {}): StockPlan => ({
  pieces: bars.flatMap(({ pieces }) => pieces.map(({ name, from, to }) => piece(name, to - from))),
  sizes: [sizeLayout(bars)],
  overlong: [],
  joints: [],
  ...change,
});

describe('a bar on the stock sheet', () => {
  const bars = [
    bar(1, 6000, [
      ['hoop', 2080.3],
      ['crossbar 1', 910.4],
      ['let-in 2', 60],
      ['rail', 2500],
    ]),
    bar(2, 2900, [['post', 1200.7]], { stock: 'b1', name: 'rack 3', remnant: true, heat: 'H 4711' }),
  ];

  it('is drawn to the scale that is said: whole, its pieces where they lie, and what is left', () => {
    for (const paper of ['a4', 'letter'] as const) {
      const page = pages(alone(bars), makeJob(38.1, paper)).at(-1);
      const [factor, ...others] = factors(page!);
      expect(others).toEqual([]);
      const whole = wholeBars(page!);
      expect(whole).toHaveLength(2);
      const drawn = boxes(ofRole(page!, 'edge'));
      bars.forEach((one, index) => {
        const { left, top, width } = whole[index]!;
        expect(Math.abs(width - one.length * factor!)).toBeLessThan(TOLERANCE);
        const own = drawn.filter((box) => Math.abs(box.top - top) < 1e-6);
        expect(own).toHaveLength(one.pieces.length);
        one.pieces.forEach(({ from, to }, at) => {
          expect(Math.abs(own[at]!.left - left - from * factor!)).toBeLessThan(TOLERANCE);
          expect(Math.abs(own[at]!.width - (to - from) * factor!)).toBeLessThan(TOLERANCE);
        });
      });
      const keep = boxes(ofRole(page!, 'frame').filter(({ stroke }) => stroke?.width === 0.5)).filter(
        ({ height }) => Math.abs(height - THICK) < 1e-6,
      );
      expect(keep).toHaveLength(2);
      expect(Math.abs(keep[1]!.width - bars[1]!.offcut.value * factor!)).toBeLessThan(TOLERANCE);
    }
  });

  it('is as long in the PDF as on the page', async () => {
    const plan = { ...makePlan(), stock: alone(bars) };
    const sheet = await renderSheet('stock', { plan, job: makeJob(), revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    const page = (await readPdf(sheet.pdf)).at(-1);
    const spans = page!.paths
      .map(({ points }) => around(points))
      .filter(({ height }) => Math.abs(height - THICK) < 0.01);
    const [factor] = factors(pages(alone(bars)).at(-1)!);
    const longest = Math.max(...spans.map(({ width }) => width));
    expect(Math.abs(longest - 6000 * factor!)).toBeLessThan(TOLERANCE);
    for (const { from, to } of bars[0]!.pieces) {
      const drawn = spans.some(({ width }) => Math.abs(width - (to - from) * factor!) < TOLERANCE);
      expect(drawn, String(to - from)).toBe(true);
    }
  });

  it('says name and length of each piece, and where the tape that is hooked on its trimmed end says cut', () => {
    const text = said(alone(bars));
    for (const { name, from, to } of onTape(bars[0]!)) {
      expect(text).toContain(name);
      expect(text).toContain(`${formatLength(to - from, makeJob().units)} ${formatLength(from, makeJob().units)} `);
      expect(text).toContain(`${formatLength(from, makeJob().units)} ${formatLength(to, makeJob().units)}`);
    }
    expect(onTape(bars[0]!).map(({ from }) => from)[1]).toBeCloseTo(2080.3 + SAW.kerf, 9);
  });

  it('says where it lies, its heat, what is kept and what is scrap', () => {
    const text = said(alone([...bars, bar(3, 1000, [['stub', 900]])]));
    for (const part of [
      'Bar 1 to be bought; length 6000.0 mm; heat: ____',
      'Bar 2 remnant: rack 3; length 2900.0 mm; heat H 4711',
      `KEEP ${formatLength(bars[1]!.offcut.value, makeJob().units)}`,
      'scrap 88.0 mm',
    ]) {
      expect(text).toContain(part);
    }
  });

  it('hatches scrap and the end that is cut off, never what is kept', () => {
    const hatched = (one: BarPlan): number => pages(alone([one])).flatMap((page) => ofRole(page, 'hatch')).length;
    const whole = bar(1, 2900, [['post', 1200]], { endTrim: 0 });
    const kept = { ...whole, pieces: whole.pieces.map((one) => ({ ...one, from: 0, to: 1200 })) };
    expect(hatched({ ...kept, kept: true })).toBe(0);
    expect(hatched({ ...kept, kept: false })).toBeGreaterThan(10);
  });

  it('stands once with all its numbers where several are cut alike; all of them are counted', () => {
    const text = said(
      alone([
        bar(1, 6000, [['hoop', 2080]], { times: 3 }),
        bar(4, 6000, [['rail', 1500]]),
        bar(5, 6000, [['rail', 1600]], { times: 2 }),
      ]),
    );
    for (const part of ['Bars 1–3: 3 × alike', 'Bar 4 ', 'Bars 5, 6: 2 × alike']) expect(text).toContain(part);
    expect(text).toMatch(/bars\s.*\b6\b/);
    expect(text.match(/KEEP/g)).toHaveLength(3);
  });

  it('tells a heat apart even where all else is alike', () => {
    const text = said(
      alone([bar(1, 6000, [['hoop', 2080]], { heat: 'A' }), bar(2, 6000, [['hoop', 2080]], { heat: 'B' })]),
    );
    expect(text).toContain('heat A');
    expect(text).toContain('heat B');
  });
});

describe('the stock sheet', () => {
  it('lists every piece with its number, length, how many and what for, and a box to tick', () => {
    const text = said();
    for (const row of [
      '1 hoop 2080.0 mm 1 a whole member',
      '3 let-in 2 60.0 mm 1 let-in piece of joint 2',
      '4 leg 1 640.5 mm 1 a leg',
    ]) {
      expect(text).toContain(row);
    }
    const ticks = pages().flatMap((page) =>
      boxes(ofRole(page, 'frame')).filter(({ width, height }) => Math.abs(width - height) < 1e-6),
    );
    const onBars = stock().sizes.flatMap(({ bars }) => bars.flatMap(({ pieces }) => pieces));
    expect(ticks).toHaveLength(stock().pieces.length + onBars.length);
  });

  it('says lengths in inches to 1/32 and in millimetres for a job in inches', () => {
    const job = makeJob(38.1, 'letter');
    const text = said(stock(), { ...job, units: { ...job.units, length: 'inch', fraction: 16 } });
    expect(text).toContain('1 hoop 81 7/8 in 2080 1 a whole member');
    expect(text).toContain('4 leg 1 25 7/32 in 640.5 1 a leg');
  });

  it('has its cautions in a frame and a line to sign', () => {
    const text = said();
    for (const part of [
      'sharp swarf',
      'Clamp the bar on both sides',
      'rules of the place',
      'sawn by: name and signature',
    ]) {
      expect(text).toContain(part);
    }
  });

  it.each([
    ['a4', 'mm'],
    ['letter', 'inch'],
  ] as const)('lays many bars of many short pieces over pages without a fault on %s in %s', (paper, length) => {
    const names = Array.from({ length: 14 }, (_, index) => `let-in with a long name ${String(index + 1)}`);
    const many = names.map((_, number) =>
      bar(
        number + 1,
        6000 - number,
        names.flatMap((name, index) => Array.from({ length: 1 + (index % 4) }, () => [name, 31 + 9 * number] as const)),
        {
          heat: `heat number ${String(number)}`,
          name: 'at the end of the rack by the door',
          stock: `b${String(number)}`,
        },
      ),
    );
    const crowd = bar(
      15,
      6000,
      Array.from({ length: 150 }, (_, at) => [names[at % 14]!, 33] as const),
    );
    const job = makeJob(38.1, paper);
    const plan = alone([...many, crowd], { pieces: names.map((name) => piece(name, 40, { count: 9 })) });
    const laid = pages(plan, { ...job, units: { ...job.units, length } });
    expect(laid.length).toBeGreaterThan(5);
    for (const page of laid) {
      expect(outside(page)).toEqual([]);
      expect(covered(page)).toEqual([]);
      expect(crossed(page)).toEqual([]);
    }
    expect(laid.map(saidOn).join(' ')).toContain(`Bar 15`);
  });
});
