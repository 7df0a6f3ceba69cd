import { wholeMinor } from '../quote/minor-units.ts';

/** What a length of bars costs as its share of their price [minor, not rounded]; lengths in mm. */
export const worthOf = (bar: { readonly price: number; readonly length: number }, length: number): number =>
  (bar.price * length) / bar.length;

/**
 * What offcuts that are kept are credited with [whole minor units, 0 or more]: so many percent of what they cost as part of
 * their bars. The one rule for it: quote lines, cut lists, shares of a bar and remnants in stock go by it.
 *
 * @param worth see `worthOf`
 * @returns null where nobody knows the percentage, or it is more than can be counted
 */
export function creditOf(worth: number, percent: number | null): number | null {
  if (percent === null) return null;
  // taken off as a line of a quote takes it off, so that a half is rounded alike
  const amount = wholeMinor(worth * (-percent / 100));
  return amount === null ? null : 0 - amount;
}
