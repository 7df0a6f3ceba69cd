import { HEIGHTS, STROKES, box, line, write, type Item } from './ink.ts';
import type { Block } from './text-block.ts';

/** Lines to write on, each with its name below. */
export function signatureLine(names: readonly string[], width: number): Block {
  const each = (width - 8 * (names.length - 1)) / names.length;
  return {
    height: 12,
    items: names.flatMap((name, index): Item[] => {
      const left = index * (each + 8);
      return [
        line(
          'frame',
          [
            [left, 8],
            [left + each, 8],
          ],
          STROKES.narrow,
        ),
        write([left, 11.2], name, { height: HEIGHTS.small }),
      ];
    }),
  };
}

/** A box to tick and what it stands for. */
export function tick(label: string, height: number = HEIGHTS.text): Block {
  const side = 4;
  return {
    height: side + 1.6,
    items: [
      box('frame', { left: 0, top: 0.6, width: side, height: side }, STROKES.narrow),
      write([side + 2, 0.6 + side / 2 + height / 2], label, { height }),
    ],
  };
}
