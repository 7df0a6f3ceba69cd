import { words } from '../language/words.ts';
import type { QuoteOption } from '../plan/quote.ts';
import { HEIGHTS } from './ink.ts';
import type { Money } from './money.ts';
import { table, type Cell, type Table } from './table.ts';
import { capital, space, stacked, type Block } from './text-block.ts';

/** Least height of letters for amounts so long that a row would be wider than its page [mm]. */
const SMALL = 1.9;

/** What so many frames cost, each and all, option by option; a name stands over the rows of its option where asked. */
export function breaksTable(
  options: readonly QuoteOption[],
  asked: { readonly money: Money; readonly width: number; readonly name: ((index: number) => string) | null },
): Table {
  const { money, width, name } = asked;
  const columns = [
    'sheet.quote-frames',
    'sheet.quote-each',
    'sheet.quote-each-total',
    'sheet.quote-all',
    'sheet.quote-all-tax',
    'sheet.quote-all-total',
  ] as const;
  const rows = options.flatMap(({ breaks }, index): Cell[][] => [
    ...(name === null ? [] : [[{ text: capital(name(index)), weight: 600, span: true } as const]]),
    ...breaks.map((one): Cell[] => [
      one.open === 0 ? String(one.quantity) : words('sheet.quote-count-open', { count: one.quantity }),
      { text: money.bare(one.netEach), weight: 600 },
      money.bare(one.totalEach),
      { text: money.bare(one.net), weight: 600 },
      money.bare(one.tax),
      money.bare(one.total),
    ]),
  ]);
  const longest = Math.max(0, ...options.flatMap(({ breaks }) => breaks.map(({ total }) => money.bare(total).length)));
  const made = table(
    columns.map((key) => ({ head: words(key), align: 'right' })),
    rows,
    { width, height: longest > LONG ? SMALL : HEIGHTS.text, headLines: 2 },
  );
  return name === null ? made : { ...made, rows: withNames(options, made.rows) };
}

/** The name of an option never stands alone at the foot of a page: it is one with the first row below it. */
function withNames(options: readonly QuoteOption[], rows: readonly Block[]): Block[] {
  let at = 0;
  return options.flatMap(({ breaks }) => {
    const [name = space(0), first = space(0), ...rest] = rows.slice(at, at + 1 + breaks.length);
    at += 1 + breaks.length;
    return [stacked([name, first]), ...rest];
  });
}

/** What stands above: the currency, and, where it is so, that one frame times their number is not the price of all. */
export function breaksNote(options: readonly QuoteOption[], { currency }: Money): string {
  const rounded = options.some(({ breaks }) =>
    breaks.some(
      ({ quantity, netEach, net, totalEach, total }) => netEach * quantity !== net || totalEach * quantity !== total,
    ),
  );
  const note = words('sheet.quote-in', { currency });
  return rounded ? `${note} ${words('sheet.quote-each-rounded')}` : note;
}

/** Letters of an amount from which on it is set smaller. */
const LONG = 13;
