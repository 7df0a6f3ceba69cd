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

/** What fits beside a log and must not be overlooked while the arc burns; the cut sheet has all of them. */
const SHORT = [
  'sheet.caution-short-1',
  'sheet.caution-short-2',
  'sheet.caution-short-3',
  'sheet.caution-short-4',
] as const;

const INSET = 3;

/** The few cautions of a set-up's page in a frame; they defer to local rules and to qualified people. */
export const shortCautions = (width: number): Block =>
  cautionFrame(
    SHORT.map((key, index) => ({ text: words(key), bold: index === 1 || index === 2 })),
    { width, height: HEIGHTS.small, inset: 2, head: HEIGHTS.text },
  );

/** The cautions in a frame; they defer to local rules and to qualified people. */
export const cautions = (width: number): Block =>
  cautionFrame(
    CAUTIONS.map((key, index) => ({ text: words(key), bold: index === 0 || index === 1 || index === 3 })),
    { width, height: 2 },
  );

/** Sentences in a thick frame under the head 'Cautions'. */
export function cautionFrame(
  sentences: readonly { readonly text: string; readonly bold: boolean }[],
  size: { readonly width: number; readonly height: number; readonly inset?: number; readonly head?: number },
): Block {
  const { width, inset = INSET, head = HEIGHTS.head } = size;
  const inner = width - 2 * inset;
  const text = stacked([
    paragraph(words('sheet.cautions'), inner, { height: head, weight: 600 }),
    ...sentences.map(({ text: sentence, bold }) =>
      paragraph(sentence, inner, { height: size.height, weight: bold ? 600 : 400 }),
    ),
  ]);
  const height = text.height + 2 * inset;
  return {
    height: height + 2,
    items: [
      box('frame', { left: 0, top: 0, width, height }, { ...STROKES.edge, width: 0.7 }),
      ...text.items.map((item) => moved(item, [inset, inset])),
    ],
  };
}
