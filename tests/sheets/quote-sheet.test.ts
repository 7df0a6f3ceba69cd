import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { wordsOf } from '../../server/language/words.ts';
import { planInWords } from '../../server/plan-in-words.ts';
import type { QuoteBreak } from '../../server/plan/quote.ts';
import { layoutSheet } from '../../server/sheets/render-sheet.ts';
import { makePlan } from './fixture.ts';
import { figure } from './fixture-figure.ts';
import { way } from './fixture-way.ts';
import { line, option, quote, quotePlan } from './fixture-work.ts';
import { saidOn } from './laid-pages.ts';
import { bare, example, jobWith, pages, printed, said } from './quote-pages.ts';

describe("the customer's quote", () => {
  it('prints the totals of the plan for every option and every number of frames', async () => {
    const text = await printed('quote');
    for (const { total, net, tax, groups, breaks, open } of quote().options) {
      expect(text).toContain(`${open.length > 0 ? 'at least ' : ''}EUR ${bare(total)}`);
      for (const amount of [net, tax, ...groups.map((one) => one.amount)]) expect(text).toContain(bare(amount));
      for (const one of breaks) {
        const row = [one.netEach, one.totalEach, one.net, one.tax, one.total].map((minor) => bare(minor)).join(' ');
        expect(text).toContain(`${String(one.quantity)}${one.open > 0 ? ', at least' : ''} ${row}`);
      }
    }
  });

  it('says its number, revision and days, or that it is a draft', () => {
    const named = jobWith({ reference: 'Q-2026-17' });
    const issued = said('quote', { job: named, issued: { number: 3, issuedAt: '2026-11-03T10:00:00Z' } });
    for (const part of ['Q-2026-17', '3, issued 3 Nov 2026', '2 Nov 2026', 'valid until 2 Dec 2026', 'A rowing club']) {
      expect(issued).toContain(part);
    }
    expect(issued).not.toMatch(/draft/i);
    expect(said('quote', { job: named })).toMatch(/draft, not issued.*This is a draft, not issued: it binds nobody/);
  });

  it('says nothing of what the shop pays, puts on top or reckons', () => {
    const text = said('quote');
    expect(text).not.toMatch(/\bcosts?\b|margin|overhead|rounding|\brates?\b|since|a = a/i);
    const shop = said('quote-working');
    for (const word of ['cost', 'margin', 'overhead', 'rounding', 'a = a']) expect(shop).toContain(word);
  });

  it('says what is not in the price, a share of the shop without its name', () => {
    expect(said('quote')).toContain(
      'Not in the price of Option 1: splice, fewest welds: filler, grinding, polishing, cleaning.',
    );
    const [first] = quote().options;
    const at = first!.lines.findIndex(({ key }) => key === 'margin');
    const open = quotePlan([{ ...first!, open: [at] }]);
    expect(said('quote', { quote: open })).toContain('Not in the price: a share that is not settled yet.');
  });

  it('says large on its first page and on top of every other that examples are no price', () => {
    const long = jobWith({ terms: Array.from({ length: 60 }, (_, at) => `Term ${String(at)}`).join('\n') });
    const laid = pages('quote', { quote: example(), job: long });
    expect(laid.length).toBeGreaterThan(1);
    for (const page of laid) expect(saidOn(page)).toContain('EXAMPLE RATES: NOT A PRICE');
    const largest = laid[0]!.items.flatMap((item) => (item.kind === 'text' ? [item] : []));
    expect(largest.find(({ text }) => text === 'EXAMPLE RATES: NOT A PRICE')!.height).toBeGreaterThan(7);
    expect(said('quote')).not.toContain('EXAMPLE RATES');
  });

  it('offers what is offered alone, and what is shown where nothing is', () => {
    const [one, other] = quote().options;
    const text = said('quote', { quote: quotePlan([one!, { ...other!, offered: false }]) });
    expect(text).not.toContain('new frame');
    const none = quotePlan([
      { ...one!, offered: false },
      { ...other!, offered: false },
    ]);
    expect(said('quote', { quote: none })).toContain(`EUR ${bare(one!.total)}`);
    expect(said('quote', { quote: none })).not.toContain(`EUR ${bare(other!.total)}`);
  });

  it('tells what is done, welds, days and how near each option comes, with the ± of it', () => {
    const text = said('quote');
    for (const part of [wordsOf('sheet.done', 'splice-fewest'), wordsOf('sheet.done', 'new-frame')]) {
      for (const word of part.split(' ')) expect(text).toContain(word);
    }
    expect(text).toContain('how near: fixing points 0.6 ± 1.0 mm off as wanted, ± 1.0 mm');
    expect(text).toContain('how near: corners 0.4 ± 1.0 mm off as wanted, ± 1.0 mm');
    expect(text).not.toContain('at most');
    expect(text).toMatch(/welds 2 0 days until it is there 1 not known yet/);
  });

  it('promises a frame that did not come back no nearer than its sizes are known', () => {
    const priced = quotePlan([option('frame', [line('tube', figure(6, 'm'), 1450)])]);
    const made = makePlan();
    const [first, ...others] = made.frame!.checks;
    const of = (band: number | null) => {
      const checks = [
        { ...first!, outside: figure(950, 'mm', band) },
        ...others.map((one) => ({ ...one, outside: figure(600, 'mm') })),
      ];
      return said('quote', { quote: priced, plan: { frame: { ...made.frame!, checks } } });
    };
    expect(of(33.94)).toContain('how near it comes as wanted, ± 33.9 mm welds');
    expect(of(null)).toContain('how near it comes as wanted welds');
  });

  it('says of a rebend that tubes come off where welds are made again, and that nothing is cut where none is', () => {
    const rebent = (welds: number) => {
      const priced = quotePlan([option('rebend', [line('bend', figure(1, 'h'), 5000)])]);
      const made = makePlan();
      const ways = [way('rebend', [], 100, { welds: figure(welds, 'count') })];
      return said('quote', { quote: priced, plan: { correction: { ...made.correction!, ways } } });
    };
    expect(rebent(2)).toContain('Tubes in the way come off and are welded on again.');
    expect(rebent(2)).not.toContain('Nothing is cut');
    expect(rebent(0)).toContain('Nothing is cut.');
  });

  it('draws the frame to scale, and says every size that it is checked by', () => {
    const [page] = pages('quote');
    const edges = page!.items.filter((item) => item.kind === 'line' && item.role === 'edge');
    expect(edges.length).toBeGreaterThan(2);
    expect(saidOn(page!)).toMatch(/As wanted, scale 1:\d+/);
    const made = makePlan();
    const checks = Array.from({ length: 12 }, (_, index) => ({
      ...made.frame!.checks[0]!,
      key: 'inner-crossbar',
      index: index + 1,
      outside: figure(100 + index, 'mm'),
    }));
    const text = said('quote', { plan: { frame: { ...made.frame!, checks } } });
    for (const { outside } of checks) expect(text).toContain(`: ${String(outside.value)}.0 mm`);
  });

  it('says that each is rounded where so many times each is not the price of all', () => {
    const rounded = /Each is rounded; the price is that of all/;
    const priced = quotePlan([option('frame', [line('tube', figure(6, 'm'), 1450)], {}, [1, 3])]);
    const [only] = priced.options;
    const with3 = (change: Partial<QuoteBreak>) =>
      quotePlan([{ ...only!, breaks: [only!.breaks[0]!, { ...only!.breaks[1]!, ...change }] }]);
    const even = with3({ net: 30_000, netEach: 10_000, total: 36_000, totalEach: 12_000 });
    expect(said('quote', { quote: even })).not.toMatch(rounded);
    expect(said('quote', { quote: with3({ net: 30_001, netEach: 10_000, total: 36_000, totalEach: 12_000 }) })).toMatch(
      rounded,
    );
    expect(
      said('quote-working', { quote: with3({ net: 30_000, netEach: 10_000, total: 36_001, totalEach: 12_000 }) }),
    ).toMatch(rounded);
  });

  it('has a box for each option, and a place for how many frames, name, date and signature', () => {
    expect(said('quote')).toMatch(
      /Accepted Option 1: splice, fewest welds Option 2: new frame how many frames name date signature/,
    );
  });

  it('keeps each line of the terms a paragraph', () => {
    const text = said('quote', { job: jobWith({ terms: 'Half with the order.\n\nThe rest on delivery.' }) });
    expect(text).toContain('Terms Half with the order. The rest on delivery. Accepted');
    expect(said('quote')).not.toContain('Terms');
  });
});

describe('amounts in other currencies', () => {
  it.each([
    ['JPY', 0, 'JPY 12,480', '12,480'],
    ['BHD', 3, 'BHD 12.480', '12.480'],
  ] as const)('of %s have %i digits', (currency, minorDigits, whole, cell) => {
    const [first] = quote().options;
    const priced = quotePlan([{ ...first!, total: 12480 }], { currency, minorDigits });
    for (const name of ['quote', 'quote-working'] as const) {
      const text = said(name, { quote: priced });
      expect(text).toContain(whole);
      expect(text).toContain(cell);
      expect(text).not.toContain('EUR');
    }
  });
});

describe('the example', () => {
  it.each(['a4', 'letter'] as const)('has its quote on one page of %s', (paper) => {
    const stage = landingStage();
    const asked = { ...stage, print: { ...stage.print, paper } };
    const sheet = layoutSheet('quote', { plan: planInWords(asked), job: asked, revision: null });
    expect(sheet.ok && sheet.pages.length).toBe(1);
  });
});
