import { words } from '../language/words.ts';
import { HEIGHTS, STROKES, line, write, type Item, type Role, type Spot } from './ink.ts';
import type { Block } from './text-block.ts';

/** Four inches, by definition of the inch. */
const FOUR_INCHES = 101.6;
const HUNDRED = 100;

/** A bar with its two end ticks; the bar itself is one straight line of exactly its length. */
function bar(role: Role, length: number, label: string, y: number): Item[] {
  const tick = (x: number): readonly Spot[] => [
    [x, y - 1.8],
    [x, y + 1.8],
  ];
  return [
    line(
      role,
      [
        [0, y],
        [length, y],
      ],
      STROKES.check,
    ),
    line('mark', tick(0), STROKES.thin),
    line('mark', tick(length), STROKES.thin),
    write([length + 3, y + 1.2], label, { height: HEIGHTS.text }),
  ];
}

/** Bars of 100 mm and 4 in to lay a steel rule on before a wrap is cut out. */
export function checkBars(): Block {
  return {
    height: 12,
    items: [
      ...bar('check-mm', HUNDRED, words('sheet.bar-mm'), 3),
      ...bar('check-inch', FOUR_INCHES, words('sheet.bar-inch'), 9),
    ],
  };
}
