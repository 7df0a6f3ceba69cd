import { words } from '../language/words.ts';
import { HEIGHTS, STROKES, box, line, write } from './ink.ts';
import type { Block } from './text-block.ts';

/** The head of one step of the work: its number, its name, a box to tick and a line to sign. */
export function stepHead(number: number, title: string, width: number): Block {
  const sign = width - 42;
  const numbered = write([0, 9], String(number), { height: 4.2, weight: 600 });
  return {
    height: 11,
    items: [
      line(
        'table',
        [
          [0, 2],
          [width, 2],
        ],
        STROKES.edge,
      ),
      numbered,
      write([Math.max(7, numbered.width + 3), 9], title, { height: HEIGHTS.head, weight: 600 }),
      write([sign - 7, 8.4], words('sheet.done'), { height: HEIGHTS.small, align: 'right' }),
      box('frame', { left: sign - 5.5, top: 4.6, width: 4.5, height: 4.5 }, STROKES.narrow),
      write([sign + 2, 8.4], words('sheet.signed'), { height: HEIGHTS.small }),
      line(
        'frame',
        [
          [sign + 13, 9.1],
          [width, 9.1],
        ],
        STROKES.narrow,
      ),
    ],
  };
}
