/**
 * The most that one line may come to [minor units]; our own choice: with less than a thousand lines every sum of them, and
 * what a percentage adds, stays a whole number that is held exactly (under 2⁵³, 9 × 10¹⁵).
 */
export const MOST_AMOUNT = 1e12;

/** The most of anything that a line is reckoned with, in the line's unit; our own choice, far beyond any job. */
export const MOST_QUANTITY = 1e12;

/**
 * A half that reckoning in binary left a hair below a half is one: 1.005 × 100 000. A few roundings of a number; derived.
 */
const HAIR = 8 * Number.EPSILON;

/**
 * Whole minor units: halves go up, below zero too (2.5 is 3, −2.5 is −2).
 *
 * @returns null where it is more than a line may come to
 */
export function wholeMinor(value: number): number | null {
  const whole = Math.floor(value + 0.5 + HAIR * Math.abs(value));
  // + 0 makes −0 a plain zero
  return Math.abs(whole) <= MOST_AMOUNT ? whole + 0 : null;
}

/** Sum of what has an amount. */
export const sumOf = (lines: readonly { readonly amount: number | null }[]): number =>
  lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
