import type { Units } from '../job/job.ts';
import { inputName } from '../language/en/inputs.ts';
import { fieldName } from '../language/field-name.ts';
import { formatFigure, formatQuantity, shownBand } from '../language/quantity-format.ts';
import { unitWords } from '../language/en/units.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure, Unit } from '../plan/figure.ts';
import type { QuoteLine, QuotePart } from '../plan/quote.ts';
import { formulaText } from './formula-text.ts';
import { HEIGHTS, STROKES, line, moved } from './ink.ts';
import type { Money } from './money.ts';
import { lineName } from './quote-words.ts';
import { table, type Cell, type Table } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** How far the working stands in from its line, and its letters [mm]. */
const INDENT = 5;
const SMALL = HEIGHTS.small;

type How = { readonly money: Money; readonly units: Units; readonly width: number };

/** Every line with quantity, rate and amount; under it what the quantity is made of and how it was reckoned. */
export function workingLines(lines: readonly QuoteLine[], how: How): Table {
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
  return { head: made.head, rows };
}

function lineCells(one: QuoteLine, { money, units }: How): Cell[] {
  const open: Cell = { text: words('sheet.open'), weight: 600 };
  const marks = [one.since, ...(one.example ? [words('sheet.rate-example')] : [])];
  return [
    { text: lineName(one, units), weight: 600 },
    one.quantity === null ? open : quantityWords(one.quantity, money, units),
    one.rate === null ? (one.missing.includes(one.rateField) ? open : '') : rateWords(one, money),
    marks.filter((text) => text !== '').join(', '),
    one.amount === null ? open : { text: money.bare(one.amount), weight: 600 },
  ];
}

/** A quantity in its unit; what a percentage is taken of is money. */
const quantityWords = (figure: Figure, money: Money, units: Units): string =>
  figure.unit === 'minor' ? money.bare(figure.value) : formatFigure(figure, units);

/** A rate with what it is for: one unit of its line's quantity, or a percentage. */
function rateWords({ rate, rateUnit, quantity }: QuoteLine, money: Money): string {
  if (rate === null) return '';
  if (rateUnit === 'percent') return `${String(Math.round(rate * 100) / 100)} %`;
  const said = money.bare(rate);
  if (quantity === null) return said;
  const unit = unitWords[quantity.unit];
  return unit === '' ? words('sheet.rate-each', { rate: said }) : words('sheet.rate-of', { rate: said, unit });
}

/** What stands below a line: what is missing, the parts of its quantity, formula and inputs. */
function under(one: QuoteLine, { money, units, width }: How): Block[] {
  const inner = width - INDENT;
  const missing = one.missing.map((field) => fieldName(field));
  const parts = one.parts.map((part) => partWords(part, money, units));
  const told = [
    ...(missing.length === 0
      ? []
      : [{ text: words('sheet.line-missing', { fields: [...new Set(missing)].join(', ') }), bold: true }]),
    ...(parts.length === 0 ? [] : [{ text: words('sheet.line-parts', { parts: parts.join('; ') }), bold: false }]),
    ...(one.quantity === null ? [] : [{ text: reckoned(one.quantity, money, units), bold: false }]),
  ];
  return told
    .filter(({ text }) => text !== '')
    .map(({ text, bold }) => paragraph(text, inner, { height: SMALL, weight: bold ? 600 : 400 }));
}

/** 'piece hoop 2080.0 mm'. */
function partWords({ key, name, value, unit }: QuotePart, money: Money, units: Units): string {
  const part = wordsOf('part', key, { name });
  return words('sheet.line-part', {
    part: name === '' || part.includes(name) ? part : `${part} ${name}`,
    value: valueWords(value, unit, money, units),
  });
}

const valueWords = (value: number, unit: Unit, money: Money, units: Units): string =>
  unit === 'minor' ? money.bare(value) : formatQuantity(value, unit, units);

/** 'h = (s + n e) / 60; s = 20.0 min (set-up time), …'. */
function reckoned(figure: Figure, money: Money, units: Units): string {
  const { inputs } = figure.working;
  const formula = formulaText(figure.working.formula);
  const given = inputs
    .map(({ symbol, name, value, unit }) =>
      words('sheet.line-input', {
        symbol: formulaText(symbol),
        name: inputName(name),
        value: valueWords(value, unit, money, units),
      }),
    )
    .join(', ');
  const band = shownBand(figure, units);
  const said = given === '' ? formula : words('sheet.line-inputs', { formula, inputs: given });
  return band === '' ? said : `${said}; ${band}`;
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
