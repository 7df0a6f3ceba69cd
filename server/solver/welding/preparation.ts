import type { WeldForm, Welding } from '../../job/welding.ts';
import type { Preparation } from '../../plan/welding.ts';
import { BRIDGED } from '../correction/weld-limits.ts';

/** Thickest wall that is welded square where nothing is typed [mm], thicker ones get a bevel: common practice. */
export const SQUARE_UP_TO = 3;
/** Thickest wall of a square butt from one side [mm]: ISO 9692-1:2013, ref. 1.2.1; from memory. */
export const SQUARE_AT_MOST = 4;
/** Gap of a bevel [mm], 1.5 to 2.5: common practice, no source; US pipe practice is 1.6 to 2.4. */
const BEVEL_GAP = { low: 1.5, high: 2.5 } as const;
/** Largest gap of a square butt in tube [mm], 0 to 1 with filler: common practice, no source. */
const SQUARE_GAP = 1;
/** Gap of square faces over a sleeve [mm], so that the weld melts into it: common practice, no source. */
const SLEEVE_GAP = { low: 1, high: 2 } as const;
/** Local gap that closes without filler, in walls and at most [mm]: common practice, no source. */
const TIGHT = { walls: 0.1, most: 0.2 } as const;

export type Fit = { readonly wall: number; readonly gap: number; readonly groove: Welding['groove'] };

/** How the faces of a form of weld are prepared: a butt by its faces as typed, else by its wall. */
export function preparationOf(form: WeldForm, { wall, gap, groove }: Fit): Preparation {
  if (form === 'saddle') return 'saddle';
  if (form === 'pad') return 'fillet';
  if (groove.form === 'bevel' || (groove.form === null && wall > SQUARE_UP_TO)) return 'bevel';
  return gap > 0 ? 'square-gap' : 'square-tight';
}

/** Local gap that a butt without filler still closes over [mm]: 0.1 t, at most 0.2. */
export const tightGap = (wall: number): number => Math.min(TIGHT.walls * wall, TIGHT.most);

/**
 * Least and largest gap that a preparation is welded with [mm]; a square one no wider than its wall, but for one over a
 * sleeve, which needs a gap to be melted into it.
 */
export function gapLimits(
  preparation: Preparation,
  wall: number,
  backing: Welding['backing'],
): { readonly low: number; readonly high: number } {
  switch (preparation) {
    case 'bevel':
      return BEVEL_GAP;
    case 'square-tight':
    case 'square-gap':
      return backing === 'sleeve' ? SLEEVE_GAP : { low: 0, high: Math.min(SQUARE_GAP, wall) };
    case 'saddle':
    case 'fillet':
      return { low: 0, high: BRIDGED * wall };
  }
}
