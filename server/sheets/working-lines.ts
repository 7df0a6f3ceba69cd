import { fieldName } from '../language/field-name.ts';
import { lineName } from '../language/quote-names.ts';
import { words, wordsOf } from '../language/words.ts';
import type { QuoteLine } from '../plan/quote.ts';
import { HEIGHTS, STROKES, line, moved } from './ink.ts';
import { partWords, quantityWords, rateWords, reckonedWords, type LineHow } from './line-words.ts';
import { table, type Cell, type Table } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** How far the working stands in from its line, and its letters [mm]. */
const INDENT = 5;
const SMALL = HEIGHTS.small;

/** What is put on the cost: these lines stand together, with the sums below them. */
const PUT_ON: ReadonlySet<QuoteLine['key']> = new Set(['overhead', 'margin', 'rounding', 'tax'] as const);

type How = LineHow & { readonly width: number };

/**
 * Every line with quantity, rate and amount; under it what the quantity is made of and how it was reckoned. What is put on
 * the cost is one with the sums, so that no page begins with a tax whose price stands on the one before.
 */
export function workingLines(lines: readonly QuoteLine[], sums: Block, how: How): Table {
  const made = table(
    [
      { head: words('sheet.line'), align: 'left' },
      { head: words('sheet.quantity'), align: 'right' },
      { head: words('sheet.rate'), align: 'right' },
      { head: words('sheet.rate-since'), align: 'left' },
      { head: words('sheet.amount'), align: 'right' },
    ],
    lines.map((one) => lineCells(one, how)),
    { width: how.width },
  );
  const rows = made.rows.map((row, index) => {
    const one = lines[index];
    return one === undefined ? row : opened(row, under(one, how), how.width);
  });
  const isPutOn = (_: Block, index: number): boolean => PUT_ON.has(lines[index]?.key ?? 'tube');
  const above = rows.filter((row, index) => !isPutOn(row, index));
  return { head: made.head, rows: [...above, stacked([...rows.filter(isPutOn), sums])] };
}

function lineCells(one: QuoteLine, how: How): Cell[] {
  const open: Cell = { text: words('sheet.open'), weight: 600 };
  const marks = [one.since, ...(one.example ? [words('sheet.rate-example')] : [])];
  return [
    { text: lineName(one, how.units), weight: 600 },
    one.quantity === null ? open : quantityWords(one, how),
    one.rate === null ? (one.missing.includes(one.rateField) ? open : '') : rateWords(one, how.money),
    marks.filter((text) => text !== '').join(', '),
    one.amount === null ? open : { text: how.money.bare(one.amount), weight: 600 },
  ];
}

/** What stands below a line: what is missing; the parts of its quantity, formula and inputs. */
function under(one: QuoteLine, how: How): Block[] {
  const inner = how.width - INDENT;
  const missing = one.missing.map((field) => fieldName(field));
  const told = [
    {
      text: missing.length === 0 ? '' : words('sheet.line-missing', { fields: [...new Set(missing)].join(', ') }),
      bold: true,
    },
    { text: workingWords(one, how), bold: false },
  ];
  return told
    .filter(({ text }) => text !== '')
    .map(({ text, bold }) => paragraph(text, inner, { height: SMALL, weight: bold ? 600 : 400 }));
}

/** The hours of a machine are those of its work, which are told there. */
function workingWords({ key, of, parts, quantity }: QuoteLine, how: How): string {
  if (key === 'machine') return words('sheet.line-as', { line: wordsOf('quote', of) });
  const said = [
    parts.length === 0
      ? ''
      : words('sheet.line-parts', { parts: parts.map((part) => partWords(part, how)).join('; ') }),
    quantity === null ? '' : reckonedWords(quantity, how),
  ];
  return said.filter((text) => text !== '').join(' ');
}

/** A row with its working under it, and its rule under both. */
function opened(row: Block, told: readonly Block[], width: number): Block {
  const text: Block = { ...row, items: row.items.filter(({ kind }) => kind === 'text') };
  const below = stacked([...told, space(told.length > 0 ? 1 : 0)]);
  const whole = stacked([text, { ...below, items: below.items.map((item) => moved(item, [INDENT, -0.6])) }]);
  return {
    ...whole,
    items: [
      ...whole.items,
      line(
        'table',
        [
          [0, whole.height],
          [width, whole.height],
        ],
        STROKES.thin,
      ),
    ],
  };
}
