import type { Units } from '../job/job.ts';
import { formatFigure, formatMoney } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { QuoteLine, QuotePlan } from '../plan/quote.ts';
import { figuresRow } from './figures-row.ts';
import { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import type { Drafts } from './page.ts';
import { remarks, tubeWords, type SheetInput } from './sheet-input.ts';
import { signatureLine } from './sign.ts';
import { table, type Cell } from './table.ts';
import { paragraph, space, stacked } from './text-block.ts';

/** Lines with quantity, rate and amount; a line whose rate or time is missing stands open. */
export function quoteSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  if (plan.quote === null) return { ok: false, reason: 'quote-not-possible' };
  const quote = plan.quote;
  const flow = new Flow(job.print.paper, 'upright');
  const scope = quote.scope === 'frame' ? words('sheet.quote-frame') : wordsOf('way', quote.scope);
  flow.add(paragraph(words('sheet.estimate'), flow.width, { height: HEIGHTS.title, weight: 600 }));
  flow.add(
    figuresRow(
      [
        { name: words('sheet.priced'), value: scope },
        { name: words('sheet.tube'), value: tubeWords(job) },
        { name: words('sheet.rates-of'), value: quote.date === '' ? words('sheet.no-date') : quote.date },
      ],
      flow.width,
      HEIGHTS.text,
    ),
  );
  flow.add(space(3));
  flow.addTable(
    table(
      [
        { head: words('sheet.line'), align: 'left' },
        { head: words('sheet.quantity'), align: 'right' },
        { head: words('sheet.rate'), align: 'right' },
        { head: words('sheet.amount'), align: 'right' },
      ],
      quote.lines.map((one) => row(one, quote, job.units)),
      { width: flow.width },
    ),
  );
  const subtotal = formatMoney(quote.subtotal, quote.currency, quote.minorDigits);
  const open = quote.open.map((key) => wordsOf('quote', key)).join(', ');
  flow.add(
    stacked([
      space(4),
      figuresRow(
        [{ name: words(open === '' ? 'sheet.subtotal' : 'sheet.subtotal-without-open'), value: subtotal }],
        flow.width,
        HEIGHTS.big,
      ),
      ...(open === '' ? [] : [paragraph(words('sheet.open-lines', { lines: open }), flow.width, { weight: 600 })]),
      space(3),
      paragraph(words('sheet.estimate-words'), flow.width),
    ]),
  );
  for (const block of remarks(input, /^\/rates(\/|$)/, flow.width)) flow.add(block);
  flow.add(stacked([space(8), signatureLine([words('sheet.accepted-by'), words('sheet.date')], flow.width)]));
  return { ok: true, drafts: flow.drafts() };
}

function row(one: QuoteLine, quote: QuotePlan, units: Units): Cell[] {
  const open: Cell = { text: words('sheet.open'), weight: 600 };
  return [
    wordsOf('quote', one.key),
    one.quantity === null ? open : formatFigure(one.quantity, units),
    one.rate === null ? open : rateWords(one, quote),
    one.amount === null ? open : { text: formatMoney(one.amount, quote.currency, quote.minorDigits), weight: 600 },
  ];
}

/** A rate with what it is for: one unit of the line's quantity. */
function rateWords(one: QuoteLine, quote: QuotePlan): string {
  const money = formatMoney(one.rate ?? 0, quote.currency, quote.minorDigits);
  return one.quantity === null ? money : `${money} / ${one.quantity.unit === 'm3' ? 'm³' : one.quantity.unit}`;
}
