const DIGITS = '₀₁₂₃₄₅₆₇₈₉';
/** Most terms that a formula writes out; beyond that the middle ones are left out. Our own choice. */
const WRITTEN_OUT = 4;

/** A symbol with its number below it: t₁₂. */
export const numbered = (symbol: string, number: number): string =>
  symbol + [...String(number)].map((digit) => DIGITS[Number(digit)] ?? digit).join('');

/** Symbols of so many terms between a sign: 't₁ + t₂', of many 't₁ + … + t₉'. */
export function termsOf(symbol: string, count: number, between: string): string {
  const all = Array.from({ length: count }, (_, index) => numbered(symbol, index + 1));
  const [first = '0'] = all;
  return count <= WRITTEN_OUT ? all.join(between) || first : [first, '…', numbered(symbol, count)].join(between);
}
