import { scopeShort } from '../language/quote-names.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Figure } from '../plan/figure.ts';
import type { QuoteOption } from '../plan/quote.ts';
import { daysWords } from './comparison-table.ts';
import { nearness, sizesNearness } from './how-near.ts';
import type { Money } from './money.ts';
import { wayOf } from './quote-words.ts';
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
  const { welding, quote } = input.plan;
  const welded = welding?.welds.length ?? 0;
  const onFrame = (quote?.legs ?? null) === null ? 'sheet.quote-welds' : 'sheet.quote-welds-frame';
  const days = row(words('sheet.quote-days'), ({ way }) => daysOf(way));
  return [
    row(words('sheet.quote-done'), done),
    ...nearRows(group, input),
    row(words(onFrame), ({ way }) => (way === undefined ? String(welded) : weldsOf(way))),
    ...(group.some(({ way }) => way !== undefined) ? [days] : []),
  ];
}

/** How near each comes, at the fixing points and at the corners; of a frame that did not come back its sizes are told. */
function nearRows(group: readonly Offer[], { plan, job: { units } }: SheetInput): SideRow[] {
  const sizes = sizesNearness(plan, units);
  if (group.every(({ way }) => way === undefined))
    return [{ name: words('sheet.quote-near'), cells: group.map(() => sizes) }];
  return (['fixingMisfit', 'cornerMisfit'] as const).map((key) => ({
    name: words(key === 'fixingMisfit' ? 'sheet.quote-near-fixings' : 'sheet.quote-near-corners'),
    cells: group.map(({ way }) => (way === undefined ? sizes : nearness(way, way[key], units))),
  }));
}

/** What is done; a frame that is bent again with its welds has tubes that come off for it. */
const done = ({ option: { scope }, way }: Offer): string =>
  scope === 'rebend' && (way?.welds.value ?? 0) > 0 ? words('sheet.done-parted') : wordsOf('sheet.done', scope);

const weldsOf = ({ welds }: Way): string => String(Math.round(welds.value));

const daysOf = (way: Way | undefined): string => {
  const days: Figure | null = way?.days ?? null;
  return days === null ? words('sheet.quote-days-open') : daysWords(days);
};

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
  return [
    ...groups.map((key) => amounts(wordsOf('sheet.group', key), (option) => of(option, key))),
    amounts(words('sheet.quote-net'), ({ net }) => net, true),
    amounts(words('sheet.quote-tax'), ({ tax }) => tax),
    { ...amounts(words('sheet.quote-total'), ({ total }) => total, true), cells: totals(group, money) },
  ];
}

/** What a line is left out of is told as the least that it can be. */
const totals = (group: readonly Offer[], money: Money): string[] =>
  group.map(({ option: { total, open } }) => {
    const amount = money.whole(total);
    return open.length === 0 ? amount : words('price.atLeast', { amount });
  });
