import type { WrapTemplate } from '../plan/frame.ts';

/** Paper beyond the lowest and highest ordinate, and the strip above and below that holds the names [mm]. */
export const MARGIN = 12;
export const NAMES = 9;

/** Size of the paper strip of a wrap with its names [mm], at 1:1. */
export const wrapSize = ({ wrapLength, low, high }: WrapTemplate): { width: number; height: number } => ({
  width: wrapLength,
  height: high - low + 2 * MARGIN + 2 * NAMES,
});

/** Where an ordinate lies on the drawing: the far end of the tube is up, ordinates grow towards it. */
export const level = (template: WrapTemplate, ordinate: number): number => NAMES + MARGIN + template.high - ordinate;

/** The lower edge of the strip that is cut out. */
export const bottomOf = (template: WrapTemplate): number => level(template, template.low) + MARGIN;

/** The four named generators of the tube on the paper: its name's place in the row, and how far from the left edge. */
export function quarters({ wrapLength, edge }: WrapTemplate): { readonly index: number; readonly x: number }[] {
  return [0, 1, 2, 3].map((index) => {
    const turn = (index * 90 - edge) / 360;
    return { index, x: wrapLength * (turn - Math.floor(turn)) };
  });
}

/** Whether a place along the paper lies on a dart's wall that is not cut. */
export function onHinge({ hinge, wrapLength }: WrapTemplate, girth: number): boolean {
  if (hinge === null) return false;
  const off = Math.abs(girth - hinge.girth) % wrapLength;
  return Math.min(off, wrapLength - off) < hinge.width / 2;
}
