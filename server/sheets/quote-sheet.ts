import { words } from '../language/words.ts';
import { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { moneyIn, type Money } from './money.ts';
import type { Drafts } from './page.ts';
import { breaksNote, breaksTable } from './quote-breaks.ts';
import { acceptance, customerCautions, terms } from './quote-notes.ts';
import { offerName, offerTables, offersOf, type Offer } from './quote-options.ts';
import { priceFor } from './quote-words.ts';
import { examplesBanner, quoteFacts, whatItIs } from './quote-top.ts';
import type { SheetInput } from './sheet-input.ts';
import { tableHeight } from './table.ts';
import { paragraph, space, stacked } from './text-block.ts';

/** What a customer decides and signs by: what it is, the options with their prices, terms; nothing of how a price came about. */
export function quoteSheet(input: SheetInput): Drafts {
  const { quote } = input.plan;
  if (quote === null) return { ok: false, reason: 'quote-not-possible' };
  const flow = new Flow(input.job.print.paper, 'upright');
  const { width } = flow;
  const offers = offersOf(input);
  const money = moneyIn(quote);
  const examples = offers.some(({ option }) => option.examples > 0);
  if (examples) {
    flow.begin('', words('sheet.quote-examples').toUpperCase());
    flow.add(examplesBanner(width));
  }
  flow.add(quoteFacts(input, width, words('sheet.quote')));
  flow.add(whatItIs(input, width));
  addOffers(flow, offers, input, money);
  const several = offers.some(({ option }) => option.breaks.length > 1 || option.breaks[0]?.quantity !== 1);
  if (several) {
    const options = offers.map(({ option }) => option);
    const name = offers.length < 2 ? null : (at: number) => nameAt(at, offers);
    flow.addTable(breaksTable(options, { money, width, name }), [
      space(4),
      paragraph(words('sheet.quote-breaks'), width, { height: HEIGHTS.head, weight: 600 }),
      paragraph(breaksNote(options, money), width, { height: HEIGHTS.small }),
    ]);
  }
  addEnd(flow, offers, input);
  return { ok: true, drafts: flow.drafts() };
}

/** What is to be known and agreed; what is signed stands with what is to be known where no terms stand between them. */
function addEnd(flow: Flow, offers: readonly Offer[], input: SheetInput): void {
  const { width } = flow;
  const known = stacked([space(1.5), customerCautions(offers, input, width)]);
  const agreed = terms(input, width);
  const signed = acceptance(offers, width);
  if (agreed.length === 0) {
    flow.add(stacked([known, signed]));
    return;
  }
  for (const block of [known, ...agreed, stacked([space(2), signed])]) flow.add(block);
}

/** The options with their prices, each table on one page where a page can hold it: nobody compares over two. */
function addOffers(flow: Flow, offers: readonly Offer[], input: SheetInput, money: Money): void {
  const { width } = flow;
  const head = words(offers.length > 1 ? 'sheet.quote-choose' : 'sheet.quote-options');
  const price = priceFor(offers[0]?.option.breaks[0]?.quantity ?? 1);
  const note = paragraph(words('sheet.quote-price-in', { price, currency: money.currency }), width, {
    height: HEIGHTS.small,
  });
  for (const [index, table] of offerTables(offers, input, { money, width }).entries()) {
    const above =
      index > 0 ? [space(4)] : [space(1), paragraph(head, width, { height: HEIGHTS.head, weight: 600 }), note];
    if (stacked(above).height + tableHeight(table) > flow.left) flow.runOver();
    flow.addTable(table, above);
  }
}

const nameAt = (index: number, offers: readonly Offer[]): string => {
  const offer = offers[index];
  return offer === undefined ? '' : offerName(offer, offers);
};
