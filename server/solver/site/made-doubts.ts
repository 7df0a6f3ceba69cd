import type { Off, SiteDoubt, SiteSource } from './laid-site.ts';

/** Where a variation of the made frame is taken off: no field of the job is one, so none of them is hit. */
const pointerOf = (index: number): string => `/made/${String(index)}`;

/**
 * What is in doubt of the frame as it will be made. Each of these changes the whole frame at once, so that its hinge, the
 * heads on it and the tubes beside a thing move together as they do in the metal; the ± is in the lines already.
 */
export const madeDoubts = ({ madeOff = [] }: SiteSource): SiteDoubt[] =>
  madeOff.map(({ goBackTo }, index) => ({ field: pointerOf(index), plusMinus: 1, from: 'made', name: '', goBackTo }));

/** The site with the frame as the doubt of it that is off makes it. */
export function madeWith(source: SiteSource, off: Off): SiteSource {
  const found = source.madeOff?.find((_, index) => off(pointerOf(index)) !== 0);
  return found === undefined ? source : { ...source, made: found.lines };
}
