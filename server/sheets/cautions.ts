import { words } from '../language/words.ts';
import { HEIGHTS, STROKES, box, moved } from './ink.ts';
import { paragraph, stacked, type Block } from './text-block.ts';

const CAUTIONS = [
  'sheet.caution-1',
  'sheet.caution-2',
  'sheet.caution-3',
  'sheet.caution-4',
  'sheet.caution-5',
  'sheet.caution-6',
  'sheet.caution-7',
  'sheet.caution-8',
  'sheet.caution-9',
  'sheet.caution-10',
  'sheet.caution-11',
] as const;

const INSET = 3;

/** The cautions in a frame; they defer to local rules and to qualified people. */
export function cautions(width: number): Block {
  const inner = width - 2 * INSET;
  const text = stacked([
    paragraph(words('sheet.cautions'), inner, { height: HEIGHTS.head, weight: 600 }),
    ...CAUTIONS.map((key, index) =>
      paragraph(words(key), inner, { height: 2, weight: index === 0 || index === 1 || index === 3 ? 600 : 400 }),
    ),
  ]);
  const height = text.height + 2 * INSET;
  return {
    height: height + 2,
    items: [
      box('frame', { left: 0, top: 0, width, height }, { ...STROKES.edge, width: 0.7 }),
      ...text.items.map((item) => moved(item, [INSET, INSET])),
    ],
  };
}
