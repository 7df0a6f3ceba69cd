import type { Print } from '../job/job.ts';
import type { Rectangle } from './ink.ts';

export type Paper = Print['paper'];
export type Turn = 'upright' | 'across';

/** Sizes upright [mm]: ISO 216 A4 and ANSI/ASME Y14.1 A (8.5 by 11 in). */
const SIZES: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

/** Border of ISO 5457 [mm]: 20 on the filing edge, 10 on the other three. */
const FILING = 20;
const EDGE = 10;

/** Title block of ISO 7200: 180 mm wide at the most; its height is ours. */
export const TITLE_BLOCK = { width: 180, height: 30 } as const;

/** Free strip between the border or the title block and what stands on the sheet [mm] (our own choice). */
const AIR = 4;

export function sizeOf(paper: Paper, turn: Turn): { readonly width: number; readonly height: number } {
  const { width, height } = SIZES[paper];
  return turn === 'upright' ? { width, height } : { width: height, height: width };
}

/** The rectangle inside the border. */
export function borderOf(paper: Paper, turn: Turn): Rectangle {
  const { width, height } = sizeOf(paper, turn);
  return { left: FILING, top: EDGE, width: width - FILING - EDGE, height: height - 2 * EDGE };
}

export function titleBlockOf(paper: Paper, turn: Turn): Rectangle {
  const { left, top, width, height } = borderOf(paper, turn);
  return {
    left: left + width - TITLE_BLOCK.width,
    top: top + height - TITLE_BLOCK.height,
    ...TITLE_BLOCK,
  };
}

/** What is free above the title block. */
export function contentOf(paper: Paper, turn: Turn): Rectangle {
  const { left, top, width, height } = borderOf(paper, turn);
  return {
    left: left + AIR,
    top: top + AIR,
    width: width - 2 * AIR,
    height: height - TITLE_BLOCK.height - 2 * AIR,
  };
}
