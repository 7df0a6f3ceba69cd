import { words } from '../language/words.ts';
import { HEIGHTS, STROKES, line, write, type Item } from './ink.ts';
import { fitted, paragraph, stacked, type Block } from './text-block.ts';

/** Height of a row to write in, and of the head [mm]. */
const ROW = 6.2;
const HEAD = 4.5;

const COLUMNS = [
  ['sheet.date', 0.13],
  ['sheet.log-start', 0.14],
  ['sheet.log-meter', 0.2],
  ['sheet.log-welds', 0.19],
  ['sheet.log-end', 0.14],
  ['sheet.log-by', 0.2],
] as const;

/** Rows to fill in by hand: when the gas was turned on, what the meter showed, what was welded, when it ended, by whom. */
export function weldLog(rows: number, width: number): Block {
  const height = HEAD + rows * ROW;
  const lefts = COLUMNS.map((_, index) => COLUMNS.slice(0, index).reduce((sum, [, share]) => sum + share * width, 0));
  const across = (y: number, stroke = STROKES.thin): Item =>
    line(
      'log',
      [
        [0, y],
        [width, y],
      ],
      stroke,
    );
  const items: Item[] = [
    ...COLUMNS.map(([key, share], index): Item => {
      const name = fitted(words(key), share * width - 1.2, { height: HEIGHTS.small, weight: 600 });
      return write([(lefts[index] ?? 0) + 1, 3], name.text, { height: name.height, weight: 600 });
    }),
    ...Array.from({ length: rows + 1 }, (_, index) =>
      across(HEAD + index * ROW, index === 0 ? STROKES.edge : STROKES.narrow),
    ),
    ...[...lefts, width].map((x): Item =>
      line(
        'log',
        [
          [x, HEAD],
          [x, height],
        ],
        STROKES.thin,
      ),
    ),
  ];
  return stacked([paragraph(words('sheet.log'), width, { weight: 600 }), { height: height + 1, items }]);
}
