import { unitWords } from '../language/en/units.ts';
import { scopeName } from '../language/quote-names.ts';
import { sizeWords } from '../language/size-words.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Unit } from '../plan/figure.ts';
import type { QuoteBreak, QuoteLine, QuoteOption, QuotePlan } from '../plan/quote.ts';
import { csvText, type Cell, type Column } from './csv.ts';
import { exported, refused, type ExportInput, type Exported } from './export-file.ts';

/** One line of one option for one number of frames, or a sum; `line` has how it came about, for the first number alone. */
type Row = {
  readonly quote: QuotePlan;
  readonly option: QuoteOption;
  readonly frames: number;
  readonly isSum: boolean;
  readonly name: string;
  readonly of: string;
  readonly amount: number | null;
  /** Whether it has no amount, or is a sum that something is left out of. */
  readonly open: boolean;
  readonly line: QuoteLine | undefined;
  /** Since when and whether an example: alike for each number of frames. */
  readonly like: QuoteLine | undefined;
};

const yesNo = (is: boolean): string => words(is ? 'export.yes' : 'export.no');

/** Minor units in the currency's own, with all its digits. */
const major = (minor: number | null, { minorDigits }: QuotePlan): Cell =>
  minor === null ? null : { amount: minor / 10 ** minorDigits, decimals: minorDigits };

/** A quantity of money is told in the currency's own units, as amounts are. */
function quantity({ line, quote }: Row): Cell {
  const figure = line?.quantity ?? null;
  if (figure === null) return null;
  return figure.unit === 'minor' ? major(figure.value, quote) : figure.value;
}

const unitOf = (unit: Unit | undefined, { currency }: QuotePlan): string =>
  unit === undefined ? '' : unit === 'minor' ? currency : unitWords[unit];

/** A rate may have decimals of the smallest coin, as of a bar that is shared by several jobs. */
function rate({ line, quote }: Row): Cell {
  if (line === undefined || line.rate === null) return null;
  if (line.rateUnit === 'percent') return line.rate;
  return Number.isInteger(line.rate) ? major(line.rate, quote) : line.rate / 10 ** quote.minorDigits;
}

function rateUnit({ line, quote }: Row): string {
  if (line === undefined || line.rate === null) return '';
  if (line.rateUnit === 'percent') return '%';
  const unit = line.quantity === null ? '' : unitOf(line.quantity.unit, quote);
  return unit === '' ? quote.currency : `${quote.currency} / ${unit}`;
}

/** The tube that a line is of, in mm whatever the job's unit; else the operation. */
function sizeOrPart({ of, option }: Row): Cell {
  const size = option.lines.find((line) => line.of === of)?.size ?? null;
  return size === null ? of : sizeWords(size, { length: 'mm', fraction: 16 });
}

const COLUMNS: readonly Column<Row>[] = [
  { head: words('export.head.option'), cell: ({ option }) => scopeName(option.scope) },
  { head: words('export.head.shown'), cell: ({ option, quote }) => yesNo(option.scope === quote.scope) },
  { head: words('export.head.offered'), cell: ({ option }) => yesNo(option.offered) },
  { head: words('export.head.frames'), cell: ({ frames }) => frames },
  { head: words('export.head.row'), cell: ({ isSum }) => words(isSum ? 'export.row.sum' : 'export.row.line') },
  { head: words('export.head.line'), cell: ({ name }) => name },
  { head: words('export.head.of'), cell: sizeOrPart },
  { head: words('export.head.quantity'), cell: quantity },
  { head: words('export.head.unit'), cell: ({ line, quote }) => unitOf(line?.quantity?.unit, quote) },
  { head: words('export.head.rate'), cell: rate },
  { head: words('export.head.rate-unit'), cell: rateUnit },
  { head: words('export.head.since'), cell: ({ like }) => like?.since ?? '' },
  { head: words('export.head.example'), cell: ({ like }) => yesNo(like?.example ?? false) },
  { head: words('export.head.open'), cell: ({ open }) => yesNo(open) },
  { head: words('export.head.amount'), cell: ({ amount, quote }) => major(amount, quote) },
  { head: words('export.head.minor'), cell: ({ amount }) => amount },
  { head: words('export.head.currency'), cell: ({ quote }) => quote.currency },
];

/**
 * Every line of every option for every number of frames, and what they come to: all lines of one option and number add up to
 * its total. Quantity and rate stand with the first number of frames, which the option is worked out for; the others have amounts alone.
 */
export function quoteCsv({ plan }: ExportInput): Exported {
  const { quote } = plan;
  if (plan.frame === null) return refused('frame-not-possible');
  if (quote === null || quote.options.length === 0) return refused('no-quote');
  return exported(
    csvText(
      COLUMNS,
      quote.options.flatMap((option) => rowsOf(option, quote)),
    ),
  );
}

const rowsOf = (option: QuoteOption, quote: QuotePlan): Row[] =>
  option.breaks.flatMap((one, index) => [
    ...one.lines.map(({ key, of, amount }): Row => {
      const like = option.lines.find((line) => line.key === key && line.of === of);
      return {
        ...{ quote, option, frames: one.quantity, isSum: false },
        ...{ name: wordsOf('quote', key), of, amount, open: amount === null },
        ...{ line: index === 0 ? like : undefined, like },
      };
    }),
    ...sumsOf(option, one, quote),
  ]);

/** What is put on the cost. */
const PUT_ON: ReadonlySet<QuoteLine['key']> = new Set(['overhead', 'margin', 'rounding', 'tax'] as const);

/** What the lines of so many frames come to, step by step. */
function sumsOf(option: QuoteOption, { quantity, lines, net, tax, total, open }: QuoteBreak, quote: QuotePlan): Row[] {
  const cost = lines.reduce((sum, { key, amount }) => sum + (PUT_ON.has(key) ? 0 : (amount ?? 0)), 0);
  const sums = [
    ['price.cost', cost],
    ['price.net', net],
    ['quote.tax', tax],
    ['price.total', total],
  ] as const;
  return sums.map(([key, amount]) => ({
    ...{ quote, option, frames: quantity, isSum: true },
    ...{ name: words(key), of: '', amount, open: open > 0, line: undefined, like: undefined },
  }));
}
