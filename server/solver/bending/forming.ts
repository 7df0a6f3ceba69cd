import type { BendRow } from '../../plan/bending.ts';

export type MandrelAdvice = BendRow['mandrel'];

/** Columns of the grid: least R/D of each. Below 1.5 the last column holds. */
const RATIOS = [4, 3, 2, 1.5] as const;

/**
 * Mandrel by wall factor D/t (largest of each row) and bend ratio R/D (columns as above). Common practice, no source,
 * low confidence: a starting point for a talk with the bender.
 */
const GRID: readonly { readonly upTo: number; readonly advice: readonly MandrelAdvice[] }[] = [
  { upTo: 12, advice: ['none', 'none', 'none-or-plug', 'plug'] },
  { upTo: 20, advice: ['none', 'none-or-plug', 'plug', 'ball'] },
  { upTo: 30, advice: ['none-or-plug', 'plug', 'ball', 'ball-and-wiper'] },
  { upTo: 50, advice: ['plug', 'ball', 'ball-and-wiper', 'special'] },
  { upTo: Infinity, advice: ['ball', 'ball-and-wiper', 'special', 'special'] },
];

/** The mandrel that a die bend is likely to need; a ratio between two columns takes the tighter one. */
export function mandrelAdvice(bend: { wallFactor: number; bendRatio: number }): MandrelAdvice {
  const row = GRID.find((each) => bend.wallFactor <= each.upTo);
  const column = RATIOS.findIndex((least) => bend.bendRatio >= least);
  return row?.advice[column === -1 ? RATIOS.length - 1 : column] ?? 'special';
}

/**
 * How far a bend may flatten [% of D]: 20 D/R up to R = 4D, 5 above. A rule of U-tube makers, medium confidence; it
 * says what they allow, so a bend on a good mandrel is rounder.
 */
export const flatteningGuidance = (bendRatio: number): number => (bendRatio <= 4 ? 20 / bendRatio : 5);

/**
 * Flattening that is worth a word [%]: 8 % is the limit of ASME B31.3 332.2.1 (from memory) and of the US Unified
 * Facilities Guide text (seen); 10 % is TEMA RCB-2.31's (seen quoted).
 */
export const FLATTENING_LIMIT = { note: 8, caution: 10 } as const;
