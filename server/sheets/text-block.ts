import { widthOf, type Weight } from './fonts.ts';
import { HEIGHTS, moved, write, type Item } from './ink.ts';

/** Something that stands on a page, from its own top left corner [mm]. */
export type Block = {
  readonly height: number;
  readonly items: readonly Item[];
  /** Scales of what is drawn in it, for the title block of its page. */
  readonly scales?: readonly string[];
};

const scalesOf = (blocks: readonly Block[]): string[] => blocks.flatMap(({ scales = [] }) => scales);

/** The text with a capital letter in front, where it stands as a title. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** From baseline to baseline, as a share of the height of the capitals. */
const PITCH = 1.9;

export const lineHeight = (height: number): number => PITCH * height;

type Style = { readonly height: number; readonly weight: Weight };

/** A word that is wider than the line, cut by letters. */
function pieces(word: string, width: number, { height, weight }: Style): string[] {
  if (widthOf(word, height, weight) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const letter of word) {
    if (part !== '' && widthOf(part + letter, height, weight) > width) {
      parts.push(part);
      part = '';
    }
    part += letter;
  }
  return [...parts, part];
}

/** A text broken into lines that are no wider than `width` [mm]. */
export function wrap(text: string, width: number, style: Style): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const parts = pieces(word, width, style);
    for (const [index, part] of parts.entries()) {
      const joined = current === '' ? part : `${current} ${part}`;
      if (index === 0 && widthOf(joined, style.height, style.weight) <= width) current = joined;
      else {
        if (current !== '') lines.push(current);
        current = part;
      }
    }
  }
  return current === '' ? lines : [...lines, current];
}

/** The text on one line: set smaller down to the least height, then cut short with an ellipsis. */
export function fitted(
  text: string,
  width: number,
  style: Style,
  least: number = HEIGHTS.small,
): { text: string; height: number } {
  const natural = widthOf(text, style.height, style.weight);
  if (natural <= width) return { text, height: style.height };
  const height = Math.max(least, (style.height * width) / natural);
  if (widthOf(text, height, style.weight) <= width + 1e-6) return { text, height };
  let kept = text;
  while (kept !== '' && widthOf(`${kept}…`, least, style.weight) > width) kept = kept.slice(0, -1).trimEnd();
  return { text: `${kept}…`, height: least };
}

/** Lines of text under one another. */
export function paragraph(
  text: string,
  width: number,
  { height = HEIGHTS.text, weight = 400 }: Partial<Style> = {},
): Block {
  const lines = wrap(text, width, { height, weight });
  return {
    height: lines.length * lineHeight(height),
    items: lines.map((words, index) =>
      write([0, lineHeight(height) * index + 1.4 * height], words, { height, weight }),
    ),
  };
}

export const space = (height: number): Block => ({ height, items: [] });

/** Blocks under one another as one that is never parted. */
export function stacked(blocks: readonly Block[]): Block {
  const items: Item[] = [];
  let height = 0;
  for (const block of blocks) {
    items.push(...block.items.map((item) => moved(item, [0, height])));
    height += block.height;
  }
  return { height, items, scales: scalesOf(blocks) };
}

/** Blocks beside one another, each at its distance from the left. */
export function beside(blocks: readonly { readonly left: number; readonly block: Block }[]): Block {
  return {
    height: Math.max(0, ...blocks.map(({ block }) => block.height)),
    items: blocks.flatMap(({ left, block }) => block.items.map((item) => moved(item, [left, 0]))),
    scales: scalesOf(blocks.map(({ block }) => block)),
  };
}
