import type { Rates } from '../job/rates.ts';
import { breakEvenWords } from '../language/break-even-words.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { lineName, scopeName, scopeShort } from '../language/quote-names.ts';
import { words } from '../language/words.ts';
import type { QuoteOption, QuotePlan } from '../plan/quote.ts';
import { figuresRow, type Named } from './figures-row.ts';
import { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { moneyIn, type Money } from './money.ts';
import type { Drafts } from './page.ts';
import { breaksNote, breaksTable } from './quote-breaks.ts';
import { examplesBanner, quoteFacts } from './quote-top.ts';
import { listed } from './quote-words.ts';
import { remarks, type SheetInput } from './sheet-input.ts';
import { besideGroups } from './side-by-side.ts';
import { tableHeight, type Table } from './table.ts';
import { capital, paragraph, space, stacked, type Block } from './text-block.ts';
import { workingLines } from './working-lines.ts';
import { breakLines, gasTable, optionTables, ownTable, type AmountsHow } from './working-tables.ts';

/** Findings that are about money, times and what is agreed. */
const MONEY = /^\/(rates|quote|log|stock)(\/|$)/;

/** How the price came about, for the shop alone: every line with its quantity, rate and working, and what it hangs on. */
export function quoteWorkingSheet(input: SheetInput): Drafts {
  const { quote } = input.plan;
  const shown = quote?.options.find(({ scope }) => scope === quote.scope) ?? quote?.options[0];
  if (quote === null || shown === undefined) return { ok: false, reason: 'quote-not-possible' };
  const flow = new Flow(input.job.print.paper, 'upright');
  const money = moneyIn(quote);
  addTop(flow, shown, input);
  addLines(flow, shown, money, input);
  addOptions(flow, quote, shown, { money, units: input.job.units });
  addGasAndTimes(flow, quote, money, input);
  addEnd(flow, quote, money, input);
  return { ok: true, drafts: flow.drafts() };
}

/** A head over what follows it. */
const headed = (text: string, width: number): Block[] => [
  space(4),
  paragraph(text, width, { height: HEIGHTS.head, weight: 600 }),
  space(0.5),
];

function addTop(flow: Flow, shown: QuoteOption, input: SheetInput): void {
  const { width } = flow;
  const { rates, units, quote } = input.job;
  if (shown.examples > 0) {
    flow.begin('', words('sheet.quote-examples').toUpperCase());
    flow.add(examplesBanner(width));
  }
  flow.add(quoteFacts(input, width, words('sheet.quote-working')));
  flow.add(stacked([paragraph(words('sheet.working-shop'), width, { weight: 600 }), space(2)]));
  const facts: Named[] = [
    { name: words('sheet.working-shown'), value: scopeName(shown.scope) },
    { name: words('sheet.working-frames'), value: String(shown.breaks[0]?.quantity ?? quote.quantities[0] ?? 1) },
    { name: words('sheet.working-rates'), value: rates.name === '' ? words('sheet.working-own-rates') : rates.name },
    { name: words('sheet.working-in-effect'), value: inEffect(rates) },
    ...(shown.minutes === null
      ? [{ name: words('sheet.working-labour'), value: words('sheet.open') }]
      : [{ name: words('sheet.working-labour'), value: formatFigure(shown.minutes, units) }]),
  ];
  flow.add(figuresRow(facts, width, HEIGHTS.text));
}

function inEffect({ from, until }: Rates): string {
  if (from === '' && until === '') return words('sheet.working-always');
  if (until === '') return words('sheet.working-from', { from });
  return from === '' ? words('sheet.working-until', { until }) : words('sheet.working-from-until', { from, until });
}

/** The lines of what is shown, and what they come to. */
function addLines(flow: Flow, shown: QuoteOption, money: Money, { job }: SheetInput): void {
  const { width } = flow;
  const of = (key: string): number => shown.lines.find((line) => line.key === key)?.amount ?? 0;
  const sums: Named[] = [
    { name: words('sheet.working-cost'), value: money.bare(shown.cost) },
    { name: words('sheet.working-overhead'), value: money.bare(of('overhead')) },
    { name: words('sheet.working-margin'), value: money.bare(of('margin')) },
    { name: words('sheet.working-rounding'), value: money.bare(of('rounding')) },
    { name: words('sheet.quote-net'), value: money.bare(shown.net) },
    { name: words('sheet.quote-tax'), value: money.bare(shown.tax) },
    { name: words('sheet.quote-total'), value: money.whole(shown.total) },
  ];
  const open = listed(
    shown.open.flatMap((at) => shown.lines.slice(at, at + 1).map((line) => lineName(line, job.units))),
  );
  const notes =
    open === ''
      ? []
      : [
          paragraph(`${words('sheet.working-open')}: ${open}. ${words('sheet.working-sum-open')}`, width, {
            weight: 600,
          }),
        ];
  const summed = stacked([space(2), figuresRow(sums, width, HEIGHTS.head), ...notes]);
  flow.addTable(workingLines(shown.lines, summed, { money, units: job.units, width }), [
    ...headed(words('sheet.working-lines'), width),
    paragraph(words('sheet.quote-in', { currency: money.currency }), width, { height: HEIGHTS.small }),
  ]);
}

/** All options beside one another, then what is shown for each quantity, then the sums of the others. */
function addOptions(flow: Flow, quote: QuotePlan, shown: QuoteOption, how: AmountsHow): void {
  const { width } = flow;
  const { money } = how;
  const addAll = (tables: readonly Table[], head: string): void => {
    for (const [index, table] of tables.entries()) {
      const above = index > 0 ? [space(3)] : headed(head, width);
      // lines and their sums are read together
      if (stacked(above).height + tableHeight(table) > flow.left) flow.runOver();
      flow.addTable(table, above);
    }
  };
  if (quote.options.length > 1) addAll(optionTables(quote.options, how, width), words('sheet.working-options'));
  if (shown.breaks.length < 2) return;
  const groups = besideGroups(shown.breaks).map((breaks) => breakLines({ ...shown, breaks }, how, width));
  addAll(groups, words('sheet.working-breaks', { option: scopeName(shown.scope) }));
  flow.add(paragraph(breaksNote([shown], money), width, { height: HEIGHTS.small }));
  const others = quote.options.filter((one) => one !== shown);
  if (others.length === 0) return;
  const name = (index: number): string => scopeShort(others[index]?.scope ?? 'frame');
  flow.addTable(breaksTable(others, { money, width, name }), [
    ...headed(words('sheet.working-other-breaks'), width),
    paragraph(breaksNote(others, money), width, { height: HEIGHTS.small }),
  ]);
}

function addGasAndTimes(flow: Flow, { gas, own }: QuotePlan, money: Money, input: SheetInput): void {
  const { width } = flow;
  const { rates, units } = input.job;
  if (gas.length > 0) flow.addTable(gasTable(gas, input, money, width), headed(words('sheet.working-gas'), width));
  if (own.length === 0) return;
  flow.addTable(ownTable(own, rates.labour, units, width), headed(words('sheet.working-own'), width));
  flow.add(paragraph(words('sheet.own-spread'), width, { height: HEIGHTS.small }));
}

/** Where two ways cost alike, and what is to be known about rates and times. */
function addEnd(flow: Flow, quote: QuotePlan, money: Money, input: SheetInput): void {
  const { width } = flow;
  const even = quote.breakEven.map((one) => paragraph(capital(breakEvenWords(one, money.whole)), width));
  if (even.length > 0) flow.addTogether([...headed(words('sheet.working-even'), width), ...even]);
  flow.add(space(2));
  for (const block of remarks(input, MONEY, width)) flow.add(block);
}
