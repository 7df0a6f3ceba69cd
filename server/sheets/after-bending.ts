import type { Job, Units } from '../job/job.ts';
import { closeParts, formatLength, lengthParts, type Parts } from '../language/length-format.ts';
import { fieldName } from '../language/field-name.ts';
import { formatBand, formatFigure, quantityParts } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { CheckDimension } from '../plan/frame.ts';
import type { ReadingCheck, ReadingRow } from '../plan/reading-check.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { table, tableHeight, type Cell, type Table } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** A table with the words before it, and a block after it. */
export type Told = { readonly before: readonly Block[]; readonly table: Table; readonly after: Block };

export const heightOf = ({ before, table: list, after }: Told): number =>
  stacked(before).height + tableHeight(list) + after.height;

export function addTold(flow: Flow, { before, table: list, after }: Told): void {
  flow.addTable(list, before);
  flow.add(after);
}

/** What the whole frame is checked by after bending, with a column to write in. */
export function frameChecks(
  checks: readonly CheckDimension[],
  job: Job,
  width: number,
  before: readonly Block[],
): Told {
  const told = [words('sheet.allowed-words', { class: job.bending.toleranceClass })];
  if (checks.some(({ worstTube }) => worstTube !== null)) told.push(words('sheet.worst-tube-words'));
  const after = stacked([space(1), paragraph(told.join(' '), width, { height: HEIGHTS.small }), space(2)]);
  return { before, table: checkTable(checks, job, width), after };
}

/** A size as a caliper reads it in inches, where a fraction would hide what the tube's tolerance does. */
const finely = ({ value, unit }: Figure, units: Units): Parts =>
  units.length === 'mm' ? quantityParts(value, unit, units) : closeParts(value, units);

/** The number alone, where the head of its column says the unit. */
const bare = ({ value, unit }: Figure, units: Units): string => quantityParts(value, unit, units).number;

function checkTable(checks: readonly CheckDimension[], { units }: Job, width: number): Table {
  const inUnit = (head: string): string => `${head}, ${units.length === 'mm' ? 'mm' : 'in'}`;
  return table(
    [
      { head: words('sheet.check'), align: 'left' },
      { head: wordsOf('choice.reference', 'outside'), align: 'right' },
      { head: words('wanted.expected'), align: 'right' },
      { head: words('sheet.allowed'), align: 'right' },
      { head: words('sheet.measured'), align: 'middle' },
      { head: inUnit(wordsOf('choice.reference', 'centre')), align: 'right' },
      { head: inUnit(wordsOf('choice.reference', 'inside')), align: 'right' },
      { head: inUnit(words('sheet.worst-tube')), align: 'right' },
    ],
    checks.map((check): Cell[] => {
      const { key, index, outside, centre, inside, allowed, worstTube } = check;
      // a distance between two points is the same whichever edge it is read from
      const edges = outside.value !== inside.value;
      const { band } = edges ? outside : centre;
      return [
        wordsOf('check', key, { index }),
        edges ? { text: formatFigure(outside, units), weight: 600 } : '—',
        band === null ? '—' : formatBand(band, 'mm', units),
        { text: allowed === null ? '—' : formatBand({ plusMinus: allowed.value, from: [] }, 'mm', units), weight: 600 },
        '................',
        { text: bare(centre, units), weight: edges ? 400 : 600 },
        edges ? bare(inside, units) : '—',
        worstTube === null || !edges
          ? '—'
          : words('sheet.from-to', {
              least: finely(worstTube.least, units).number,
              most: finely(worstTube.most, units).number,
            }),
      ];
    }),
    { width },
  );
}

/** What the frame would come to if the sketch were read another way, each size with what it is off by; null: nothing. */
export function readingCheck(check: ReadingCheck | null, job: Job, width: number): Told | null {
  if (check === null || check.dimensions.length === 0 || check.rows.length === 0) return null;
  return {
    table: readingTable(check, job, width),
    before: [
      paragraph(words('sheet.reading-check'), width, { height: HEIGHTS.head, weight: 600 }),
      paragraph(words('sheet.reading-check-words'), width),
      space(1),
    ],
    after: space(3),
  };
}

function readingTable({ dimensions, rows }: ReadingCheck, job: Job, width: number): Table {
  const { units } = job;
  const off = (value: number): string => {
    const { number } = lengthParts(Math.abs(value), units);
    return /[1-9]/.test(number) ? `${value > 0 ? '+' : '−'}${number}` : '0';
  };
  const gets = (row: ReadingRow, index: number): string => {
    const [figure, by] = [row.gets[index] ?? null, row.off[index] ?? null];
    if (figure === null) return '—';
    const size = formatFigure(figure, units);
    return by === null ? size : words('sheet.gets-off', { gets: size, off: off(by) });
  };
  return table(
    [
      { head: words('reading.if'), align: 'left' },
      ...dimensions.map(({ key, index, reference }) => ({
        head: `${wordsOf('check', key, { index })}, ${wordsOf('choice.reference', reference)}`,
        align: 'right' as const,
      })),
      { head: words('sheet.off-most'), align: 'right' },
    ],
    [
      [
        { text: words('sheet.as-meant'), weight: 600 },
        ...dimensions.map(({ wanted }): Cell => ({ text: formatFigure(wanted, units), weight: 600 })),
        '',
      ],
      ...rows.map((row): Cell[] => [
        misread(row, job),
        ...dimensions.map((_, index) => gets(row, index)),
        { text: row.worst === null ? '—' : formatLength(row.worst, units), weight: 600 },
      ]),
    ],
    { width, height: 2.1 },
  );
}

const misread = ({ fields, slip, dieRadius }: ReadingRow, { units }: Job): string =>
  [
    fields.length === 0 ? '' : `${fields.map((field) => fieldName(field)).join(', ')}:`,
    wordsOf('slip', slip),
    dieRadius === null ? '' : words('reading.die', { radius: formatLength(dieRadius, units) }),
  ]
    .filter((part) => part !== '')
    .join(' ');
