import { lineName, scopeShort } from '../language/quote-names.ts';
import { words, wordsOf } from '../language/words.ts';
import { formatFigure } from '../language/quantity-format.ts';
import type { Units } from '../job/job.ts';
import type { Rates } from '../job/rates.ts';
import type { Figure } from '../plan/figure.ts';
import type { GasChoice, OwnTime, QuoteLine, QuoteOption } from '../plan/quote.ts';
import { shownBand } from '../language/quantity-format.ts';
import type { Money } from './money.ts';
import { codeWords, type SheetInput } from './sheet-input.ts';
import { besideGroups, sideBySide, type SideRow } from './side-by-side.ts';
import { table, type Cell, type Table } from './table.ts';
import { capital } from './text-block.ts';

/** Letters of tables with many amounts [mm]. */
const SMALL = 2.1;

/** What amounts of an option are written with: money, units, and the sizes that its lines are of. */
export type AmountsHow = { readonly money: Money; readonly units: Units };

/** An amount in a row; null stands open. */
type Amounts = readonly { readonly key: QuoteLine['key']; readonly of: string; readonly amount: number | null }[];

/** Lines of several columns, each once: one that is new stands behind the line that it follows in its own column. */
function linesOf(columns: readonly Amounts[]): Pick<QuoteLine, 'key' | 'of'>[] {
  const found: Pick<QuoteLine, 'key' | 'of'>[] = [];
  for (const column of columns) {
    let place = 0;
    for (const { key, of } of column) {
      const known = found.findIndex((one) => one.key === key && one.of === of);
      if (known < 0) found.splice(place, 0, { key, of });
      place = (known < 0 ? place : known) + 1;
    }
  }
  return found;
}

/** Rows of amounts, a line each, for columns that have their lines in common; `named` are lines that know their sizes. */
const amountRows = (
  columns: readonly Amounts[],
  named: readonly QuoteLine[],
  { money, units }: AmountsHow,
): SideRow[] =>
  linesOf(columns).map(({ key, of }) => ({
    name: lineName({ key, of, size: named.find((line) => line.of === of)?.size ?? null }, units),
    cells: columns.map((lines) => {
      const found = lines.find((one) => one.key === key && one.of === of);
      if (found === undefined) return '';
      return found.amount === null ? words('sheet.open') : money.bare(found.amount);
    }),
    amounts: true,
  }));

type Sums = { readonly net: number; readonly tax: number; readonly total: number };

const sumRows = (columns: readonly Sums[], money: Money): SideRow[] => [
  {
    name: words('sheet.quote-net'),
    cells: columns.map(({ net }) => money.bare(net)),
    amounts: true,
    bold: true,
  },
  { name: words('sheet.quote-total'), cells: columns.map(({ total }) => money.bare(total)), amounts: true, bold: true },
];

/** Amounts of all options beside one another, line by line, a few options a table. */
export const optionTables = (options: readonly QuoteOption[], how: AmountsHow, width: number): Table[] =>
  besideGroups(options).map((group) =>
    sideBySide(
      group.map(({ scope }) => capital(scopeShort(scope))),
      [
        ...amountRows(
          group.map(({ lines }) => lines),
          group.flatMap(({ lines }) => lines),
          how,
        ),
        {
          name: words('sheet.working-cost'),
          cells: group.map(({ cost }) => how.money.bare(cost)),
          amounts: true,
          bold: true,
        },
        ...sumRows(group, how.money),
      ],
      { width, height: SMALL },
    ),
  );

/** One option for each of the quantities, line by line. */
export const breakLines = ({ breaks, lines: named }: QuoteOption, how: AmountsHow, width: number): Table =>
  sideBySide(
    breaks.map(({ quantity }) => words('sheet.working-for', { count: quantity })),
    [
      ...amountRows(
        breaks.map(({ lines }) => lines),
        named,
        how,
      ),
      ...sumRows(breaks, how.money),
      {
        name: words('sheet.quote-each'),
        cells: breaks.map(({ netEach }) => how.money.bare(netEach)),
        amounts: true,
        bold: true,
      },
      {
        name: words('sheet.quote-each-total'),
        cells: breaks.map(({ totalEach }) => how.money.bare(totalEach)),
        amounts: true,
      },
    ],
    { width, height: SMALL },
  );

/** Purge one way or another, with what each takes and costs. */
export function gasTable(choices: readonly GasChoice[], input: SheetInput, money: Money, width: number): Table {
  const { units } = input.job;
  const figure = (one: Figure | null): string =>
    one === null ? '—' : one.unit === 'minor' ? money.bare(one.value) : formatFigure(one, units);
  const columns = [
    'sheet.gas-fillings',
    'sheet.gas-minutes',
    'sheet.gas-used',
    'sheet.gas-bottles',
    'sheet.gas-changes',
    'sheet.gas-money',
  ] as const;
  const rows = choices.map((choice): Cell[] => {
    const weight = choice.chosen ? 600 : 400;
    const name: Cell = { text: gasName(choice), weight };
    if (choice.stops.length > 0) {
      const reasons = choice.stops.map((code) => codeWords(code, input.job)).join(' ');
      return [name, { text: words('sheet.gas-stops', { reasons }), weight, span: true }];
    }
    const { fillings, minutes, gas, bottles, changes, cost } = choice;
    const money = cost === null ? words('sheet.open') : figure(cost);
    return [name, ...[fillings, minutes, gas, bottles, changes].map(figure), money].map((cell) =>
      typeof cell === 'string' ? { text: cell, weight } : cell,
    );
  });
  return table(
    [
      { head: words('sheet.gas-way'), align: 'left' },
      ...columns.map((key) => ({ head: words(key), align: 'right' as const })),
    ],
    rows,
    { width, headLines: 2 },
  );
}

function gasName({ extent, joints, chosen }: GasChoice): string {
  const name = words('sheet.gas-of', {
    extent: wordsOf('sheet', `gas-extent.${extent}`),
    joints: wordsOf('sheet', `gas-joints.${joints}`),
  });
  return chosen ? words('sheet.way-marked', { name, mark: words('sheet.gas-done-so') }) : name;
}

/** What was taken on this job against what the rates have. */
export function ownTable(own: readonly OwnTime[], labour: Rates['labour'], units: Units, width: number): Table {
  const taken = (one: Figure): string => [formatFigure(one, units), shownBand(one, units)].join(' ').trim();
  const planned = (value: number | null): string =>
    value === null ? words('sheet.open') : `${String(Math.round(value * 100) / 100)} min`;
  const columns = [
    'sheet.own-entries',
    'sheet.own-set-up',
    'sheet.own-set-up-planned',
    'sheet.own-each',
    'sheet.own-each-planned',
    'sheet.own-ratio',
  ] as const;
  return table(
    [
      { head: words('sheet.own-operation'), align: 'left' },
      ...columns.map((key) => ({ head: words(key), align: 'right' as const })),
    ],
    own.map(({ operation, entries, setUp, each, ratio }): Cell[] => [
      wordsOf('quote', operation),
      String(entries),
      { text: taken(setUp), weight: 600 },
      planned(labour[operation].setUp.value),
      { text: taken(each), weight: 600 },
      planned(labour[operation].each.value),
      ratio === null ? '—' : taken(ratio),
    ]),
    { width, headLines: 2 },
  );
}
