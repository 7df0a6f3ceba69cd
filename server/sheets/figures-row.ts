import { widthOf } from './fonts.ts';
import { HEIGHTS, write, type Item } from './ink.ts';
import { fitted, type Block } from './text-block.ts';

/** A number with its name. */
export type Named = { readonly name: string; readonly value: string };

const APART = 7;

/** Numbers in a row, each under its small name; the first ones big where asked for. */
export function figuresRow(figures: readonly Named[], width: number, height: number = HEIGHTS.head): Block {
  const lineTop = HEIGHTS.small * 1.6;
  const rowHeight = lineTop + 1.5 * height + 2;
  const items: Item[] = [];
  let left = 0;
  let top = 0;
  for (const { name, value } of figures) {
    const text = fitted(value, width, { height, weight: 600 });
    const room = Math.max(widthOf(name, HEIGHTS.small, 400), widthOf(text.text, text.height, 600));
    if (left > 0 && left + room > width) {
      left = 0;
      top += rowHeight;
    }
    items.push(
      write([left, top + 2], name, { height: HEIGHTS.small }),
      write([left, top + lineTop + 1.25 * height], text.text, { height: text.height, weight: 600 }),
    );
    left += room + APART;
  }
  return { height: figures.length === 0 ? 0 : top + rowHeight, items };
}
