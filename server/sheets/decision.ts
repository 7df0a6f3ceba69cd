import { words, wordsOf } from '../language/words.ts';
import type { CorrectionPlan } from '../plan/correction.ts';
import { HEIGHTS, STROKES, box, line, write, type Item } from './ink.ts';
import { borderOf, contentOf, titleBlockOf } from './paper.ts';
import type { SheetInput } from './sheet-input.ts';
import { fitted } from './text-block.ts';

/** From one box to tick to the next below it, the box's side, and the line to sign over the border [mm]. */
const PITCH = 4.4;
const SIDE = 2.8;
const SIGN = 4.6;

/** Left of the title block: a box for each possible way, and a line for a name and a date. */
export function decision({ job }: SheetInput, { ways }: CorrectionPlan): Item[] {
  const { paper } = job.print;
  const block = titleBlockOf(paper, 'across');
  const border = borderOf(paper, 'across');
  const { left } = contentOf(paper, 'across');
  const width = block.left - left - 4;
  const small = { height: HEIGHTS.small } as const;
  const possible = ways.flatMap((way, index) => (way.possible ? [{ key: way.key, number: index + 1 }] : []));
  const columns = 2;
  const rows = Math.ceil(possible.length / columns);
  const each = width / columns;
  const bottom = border.top + border.height;
  const boxes = possible.flatMap(({ key, number }, index): Item[] => {
    const x = left + Math.floor(index / rows) * each;
    const y = block.top + 4 + (index % rows) * PITCH;
    const name = fitted(
      `${String(number)} ${wordsOf('wayShort', key)}`,
      each - SIDE - 3,
      { ...small, weight: 400 },
      1.4,
    );
    return [
      box('frame', { left: x, top: y, width: SIDE, height: SIDE }, STROKES.narrow),
      write([x + SIDE + 1.4, y + SIDE / 2 + name.height / 2], name.text, { height: name.height }),
    ];
  });
  return [
    write([left, block.top + 1.6], words('sheet.we-take'), { weight: 600 }),
    ...boxes,
    line(
      'frame',
      [
        [left, bottom - SIGN],
        [left + width, bottom - SIGN],
      ],
      STROKES.narrow,
    ),
    write([left, bottom - 1.4], words('sheet.agreed-by'), small),
    write([left + width, bottom - 1.4], words('sheet.date'), { ...small, align: 'right' }),
  ];
}
