import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { PurgePlan } from '../plan/purge.ts';
import { bigFigure } from './big-figure.ts';
import { ABOVE, BELOW, COLOURS, HEIGHTS, STROKES, box, line, moved, write, type Item } from './ink.ts';
import type { SetUp } from './set-up.ts';
import type { SheetInput } from './sheet-input.ts';
import { fitted, lineHeight, paragraph, stacked, wrap, type Block } from './text-block.ts';

type Numbered = { readonly name: string; readonly value: string };

/** Room for the number before a value, for its name above it, and under it [mm]. */
const BEFORE = 6.5;
const NAME = 3.4;
const UNDER = 0.4;

/** What is read off and set, in the order in which it is needed. */
export function numbersOf({ wait }: SetUp, purge: PurgePlan, { job }: SheetInput): Numbered[] {
  const show = (figure: Figure): string => bigFigure(figure, job.units);
  return [
    { name: words('sheet.wait-least'), value: show(wait) },
    { name: words('sheet.flow-to-wait'), value: show(purge.prePurgeFlow) },
    { name: words('sheet.wait-for-meter'), value: words('sheet.or-less', { value: show(purge.targetOxygen) }) },
    { name: words('sheet.flow-to-weld'), value: show(purge.weldingFlow) },
    { name: words('sheet.flow-to-close'), value: show(purge.closingFlow) },
    { name: words('sheet.hold-after'), value: show(purge.hold) },
  ];
}

/** The few numbers, big and all of one size, each with its place in the order of work: in a column, or in rows of three. */
export function bigNumbers(numbers: readonly Numbered[], width: number, columns: 1 | 3): Block {
  const each = width / columns;
  const rows = Math.ceil(numbers.length / columns);
  const room = each - BEFORE - 1;
  const big = { height: HEIGHTS.big, weight: 600 } as const;
  const height = Math.min(...numbers.map(({ value }) => fitted(value, room, big, HEIGHTS.head).height));
  const base = NAME + ABOVE * height;
  const row = base + BELOW * height + UNDER;
  const items = numbers.flatMap(({ name, value }, index): Item[] => {
    const [left, top] = [(index % columns) * each, Math.floor(index / columns) * row];
    const text = fitted(value, room, { height, weight: 600 }, HEIGHTS.head);
    return [
      write([left, top + base], String(index + 1), { height: HEIGHTS.head, weight: 600, colour: COLOURS.grey }),
      write([left + BEFORE, top + 2.7], name, { height: HEIGHTS.small }),
      write([left + BEFORE, top + base], text.text, { height: text.height, weight: 600 }),
      ...(index % columns === 0 && index > 0
        ? [
            line(
              'table',
              [
                [0, top - 0.2],
                [width, top - 0.2],
              ],
              STROKES.thin,
            ),
          ]
        : []),
    ];
  });
  return { height: rows * row, items };
}

/** Instead of the numbers where something keeps the set-up from being welded. */
export function doNotWeld(width: number): Block {
  const inner = width - 6;
  const lines = wrap(words('sheet.do-not-weld'), inner, { height: HEIGHTS.wall, weight: 600 });
  const big = lines.map((text, index) =>
    write([3, 3 + lineHeight(HEIGHTS.wall) * index + 1.3 * HEIGHTS.wall], text, {
      height: HEIGHTS.wall,
      weight: 600,
      colour: COLOURS.red,
    }),
  );
  const top = 3 + lines.length * lineHeight(HEIGHTS.wall);
  const why = paragraph(words('sheet.do-not-weld-why'), inner, { weight: 600 });
  const height = top + why.height + 3;
  return {
    height: height + 1,
    items: [
      box('frame', { left: 0, top: 0, width, height }, { ...STROKES.edge, width: 1, colour: COLOURS.red }),
      ...big,
      ...why.items.map((item) => moved(item, [3, top])),
    ],
  };
}

/** That the meter decides. */
export const meterWords = (width: number): Block =>
  paragraph(words('sheet.meter-decides'), width, { height: 2, weight: 600 });

/** What the three models say of each chamber, and what it means if the meter will not come down. */
export function timeWords({ chambers }: SetUp, purge: PurgePlan, { job }: SheetInput, width: number): Block {
  const show = (figure: Figure): string => formatFigure(figure, job.units);
  const said = chambers.map(({ number, plug, longTube, wellMixed, volume, printed }) => {
    const times = words('sheet.set-up-times', {
      volume: bigFigure(volume, job.units),
      gas: bigFigure(printed.gas, job.units),
      plug: show(plug.time),
      longTube: longTube === null ? words('sheet.does-not-hold') : show(longTube.time),
      wellMixed: show(wellMixed.time),
    });
    return chambers.length === 1 ? times : words('sheet.chamber-said', { number, said: times });
  });
  const several = chambers.length > 1 ? [words('sheet.hose-each', { flow: show(purge.weldingFlow) })] : [];
  return stacked(
    [...several, ...said, words('sheet.leak', { limit: show(purge.leakLimit) })].map((sentence) =>
      paragraph(sentence, width, { height: HEIGHTS.small }),
    ),
  );
}
