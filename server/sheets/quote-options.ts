import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Figure } from '../plan/figure.ts';
import type { QuoteOption } from '../plan/quote.ts';
import { daysWords } from './comparison-table.ts';
import type { Money } from './money.ts';
import { priceFor, scopeShort, wayOf } from './quote-words.ts';
import type { SheetInput } from './sheet-input.ts';
import { besideGroups, sideBySide, type SideRow } from './side-by-side.ts';
import type { Table } from './table.ts';
import { capital } from './text-block.ts';

/** An option as the customer reads it: its number among those that are offered. */
export type Offer = { readonly number: number; readonly option: QuoteOption; readonly way: Way | undefined };

/** What is offered; where nothing is marked so, what is shown. */
export function offersOf({ plan }: SheetInput): Offer[] {
  const { quote } = plan;
  if (quote === null) return [];
  const offered = quote.options.filter((one) => one.offered);
  const shown = offered.length > 0 ? offered : quote.options.filter(({ scope }) => scope === quote.scope);
  return shown.map((option, index) => ({ number: index + 1, option, way: wayOf(plan, option.scope) }));
}

/** 'option 1: splice, fewest welds'; its name alone where it is the only one. */
export const offerName = ({ number, option }: Offer, offers: readonly Offer[]): string =>
  capital(
    offers.length === 1
      ? scopeShort(option.scope)
      : words('sheet.quote-option', { number, name: scopeShort(option.scope) }),
  );

/** Options beside one another, a few a table: what is done, how near it comes, what it costs. */
export function offerTables(
  offers: readonly Offer[],
  input: SheetInput,
  { money, width }: { readonly money: Money; readonly width: number },
): Table[] {
  return besideGroups(offers).map((group) =>
    sideBySide(
      group.map((offer) => offerName(offer, offers)),
      [...workRows(group, input), ...priceRows(group, money)],
      { width },
    ),
  );
}

function workRows(group: readonly Offer[], input: SheetInput): SideRow[] {
  const row = (name: string, say: (offer: Offer) => string): SideRow => ({ name, cells: group.map(say) });
  const welded = input.plan.welding?.welds.length ?? 0;
  const days = row(words('sheet.quote-days'), ({ way }) => daysOf(way));
  return [
    row(words('sheet.quote-done'), ({ option }) => wordsOf('sheet.done', option.scope)),
    row(words('sheet.quote-near'), ({ way }) => nearness(way, input)),
    row(words('sheet.quote-welds'), ({ way }) => (way === undefined ? String(welded) : weldsOf(way))),
    ...(group.some(({ way }) => way !== undefined) ? [days] : []),
  ];
}

const weldsOf = ({ welds }: Way): string => String(Math.round(welds.value));

const daysOf = (way: Way | undefined): string => {
  const days: Figure | null = way?.days ?? null;
  return days === null ? words('sheet.quote-days-open') : daysWords(days);
};

/** How near a way comes to what is wanted. */
function nearness(way: Way | undefined, { job }: SheetInput): string {
  if (way === undefined || way.key === 'new-frame') return words('sheet.quote-as-drawn');
  return words('sheet.quote-near-words', {
    fixings: formatFigure(way.fixingMisfit, job.units),
    corners: formatFigure(way.cornerMisfit, job.units),
  });
}

/** The price before tax as a customer reads it, then tax and total. */
function priceRows(group: readonly Offer[], money: Money): SideRow[] {
  const amounts = (name: string, say: (option: QuoteOption) => number, bold = false): SideRow => ({
    name,
    cells: group.map(({ option }) => money.bare(say(option))),
    amounts: true,
    bold,
  });
  const of = (option: QuoteOption, group: string): number =>
    option.groups.find((one) => one.group === group)?.amount ?? 0;
  const groups = [...new Set(group.flatMap(({ option }) => option.groups.map((one) => one.group)))].filter((key) =>
    group.some(({ option }) => of(option, key) !== 0),
  );
  const count = group[0]?.option.breaks[0]?.quantity ?? 1;
  return [
    { name: priceFor(count), cells: group.map(() => money.currency), amounts: true },
    ...groups.map((key) => amounts(wordsOf('sheet.group', key), (option) => of(option, key))),
    amounts(words('sheet.quote-net'), ({ net }) => net, true),
    amounts(words('sheet.quote-tax'), ({ tax }) => tax),
    { ...amounts(words('sheet.quote-total'), ({ total }) => total, true), cells: totals(group, money) },
  ];
}

const totals = (group: readonly Offer[], money: Money): string[] =>
  group.map(({ option }) => money.whole(option.total));
