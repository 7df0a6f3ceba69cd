import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { QuotePlan } from '../../server/plan/quote.ts';
import { formatMoney } from '../../server/language/quantity-format.ts';
import { wordsOf } from '../../server/language/words.ts';
import { layoutSheet, renderSheet } from '../../server/sheets/render-sheet.ts';
import type { SheetInput } from '../../server/sheets/sheet-input.ts';
import { figure } from './fixture-figure.ts';
import { line, option, quote, quotePlan } from './fixture-work.ts';
import { saidOn } from './laid-pages.ts';
import { makeJob, makePlan } from './fixture.ts';
import { readPdf } from './read-pdf.ts';

type Asked = { quote?: QuotePlan; job?: Job; issued?: SheetInput['issued'] };
type Name = 'quote' | 'quote-working';

const input = ({ quote: priced = quote(), job = makeJob(), issued = null }: Asked = {}): SheetInput => ({
  plan: { ...makePlan(), quote: priced },
  job,
  revision: null,
  issued,
});

function pages(name: Name, asked: Asked = {}) {
  const sheet = layoutSheet(name, input(asked));
  if (!sheet.ok) throw new Error(sheet.reason);
  return sheet.pages;
}

const said = (name: Name, asked: Asked = {}): string =>
  pages(name, asked).map(saidOn).join(' ').replaceAll('\u00a0', ' ');

async function printed(name: Name, asked: Asked = {}): Promise<string> {
  const sheet = await renderSheet(name, input(asked));
  if (!sheet.ok) throw new Error(sheet.reason);
  return (await readPdf(sheet.pdf)).map(({ texts }) => texts.join(' ')).join(' ');
}

const job = (change: Partial<Job['quote']>): Job => {
  const made = makeJob();
  return { ...made, quote: { ...made.quote, ...change } };
};

/** An amount without its currency, as tables have it. */
const bare = (minor: number, digits = 2): string => formatMoney(minor, 'EUR', digits).replace('EUR\u00a0', '');

const example = (): QuotePlan =>
  quotePlan([option('new-frame', [line('tube', figure(6, 'm'), 1450, { example: true, since: '' })])]);

describe("the customer's quote", () => {
  it('prints the totals of the plan for every option and every number of frames', async () => {
    const text = await printed('quote');
    for (const { total, net, tax, groups, breaks } of quote().options) {
      expect(text).toContain(`EUR ${bare(total)}`);
      for (const amount of [net, tax, ...groups.map((one) => one.amount)]) expect(text).toContain(bare(amount));
      for (const one of breaks) {
        const row = [one.netEach, one.totalEach, one.net, one.tax, one.total].map((minor) => bare(minor)).join(' ');
        expect(text).toContain(`${String(one.quantity)} ${row}`);
      }
    }
  });

  it('says its number, revision and days, or that it is a draft', () => {
    const named = job({ reference: 'Q-2026-17' });
    const issued = said('quote', { job: named, issued: { number: 3, issuedAt: '2026-11-03T10:00:00Z' } });
    for (const part of ['Q-2026-17', '3, issued 2026-11-03', '2026-11-02', 'valid until 2026-12-02', 'A rowing club']) {
      expect(issued).toContain(part);
    }
    expect(issued).not.toMatch(/draft/i);
    expect(said('quote', { job: named })).toMatch(/draft, not issued.*Draft, not issued: it binds nobody/);
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
    const long = job({ terms: Array.from({ length: 60 }, (_, at) => `Term ${String(at)}`).join('\n') });
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

  it('tells what is done, welds, days and how near each option comes', () => {
    const text = said('quote');
    for (const part of [
      wordsOf('sheet.done', 'splice-fewest'),
      'Fixing points off by 0.60 mm at most, corners by 0.40 mm.',
      wordsOf('sheet.done', 'new-frame'),
      'To the sizes as wanted.',
    ]) {
      for (const word of part.split(' ')) expect(text).toContain(word);
    }
    expect(text).toMatch(/welds 2 0 days until it is there 1 not known yet/);
  });

  it('draws the frame to scale', () => {
    const [page] = pages('quote');
    const edges = page!.items.filter((item) => item.kind === 'line' && item.role === 'edge');
    expect(edges.length).toBeGreaterThan(2);
    expect(saidOn(page!)).toMatch(/scale 1:\d+/);
  });

  it('has a box for each option, and a place for name, date and signature', () => {
    expect(said('quote')).toMatch(
      /Accepted Option 1: splice, fewest welds how many frames Option 2: new frame how many frames name date signature/,
    );
  });

  it('keeps each line of the terms a paragraph', () => {
    const text = said('quote', { job: job({ terms: 'Half with the order.\n\nThe rest on delivery.' }) });
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

describe('what a quote came from', () => {
  it('has every line with quantity, rate, since when, example and amount', () => {
    const text = said('quote-working');
    expect(text).toContain('tube: 38.1 × 1.7 316L 3.100 m 14.50 / m 2026-03-01 44.95');
    expect(text).toContain('From: hoop 2080.0 mm; crossbar 1 910.0 mm.');
    expect(text).toContain('machine: welding');
    expect(text).toContain('filler 0.0040 kg open 2026-03-01 open');
    expect(text).toContain('Missing: cleaning beside grinding: each weld.');
    expect(said('quote-working', { quote: example() })).toContain('14.50 / m example 87.00');
  });

  it('adds up: the sums that it prints are those of its lines', async () => {
    const [first] = quote().options;
    const text = await printed('quote-working');
    const of = (key: string): number => first!.lines.find((one) => one.key === key)!.amount!;
    const bought = first!.lines.slice(0, 6).reduce((sum, { amount }) => sum + (amount ?? 0), 0);
    expect(bought).toBe(first!.cost);
    expect(bought + of('overhead') + of('margin') + of('rounding')).toBe(first!.net);
    const order = ['overhead', 'margin', 'rounding'].map((key) => `${key} ${bare(of(key))}`);
    for (const part of [`bought and done ${bare(bought)}`, ...order, `before tax ${bare(first!.net)}`]) {
      expect(text).toContain(part);
    }
    expect(text).toContain(`total EUR ${bare(first!.total)}`);
    expect(text).toContain('The open lines are in none of these sums.');
  });

  it('has all options beside one another and each number of frames, line by line', () => {
    const text = said('quote-working');
    const [one, other] = quote().options;
    expect(text).toContain(
      `overhead ${[one, other].map((of) => bare(of!.lines.find((l) => l.key === 'overhead')!.amount!)).join(' ')}`,
    );
    const breaks = one!.breaks.map(({ lines }) => bare(lines.find(({ key }) => key === 'weld')!.amount!)).join(' ');
    expect(text).toContain(`welding ${breaks}`);
    expect(text).toContain('filler open open open');
    expect(text).toContain('for 1 for 5 for 20');
  });

  it('has gas one way and another, own times with their spread, and where two ways cost alike', () => {
    const text = said('quote-working');
    for (const part of [
      'whole frame, welds together (as planned) 1 42.0 min 0.310 m³ 1 0 61.20',
      'whole frame, weld by weld 4 88.5 min 0.740 m³ 1 0 open',
      'dams, welds together not possible:',
      'welding 4 14.0 min ± 3.2 min',
      'By number of joints: cheaper up to 6: splice, fewest welds; above that: new frame. The splice has 2.',
      'By number of frames: splice, fewest welds is cheaper than new frame throughout. Now: 1.',
    ]) {
      expect(text).toContain(part);
    }
  });
});
