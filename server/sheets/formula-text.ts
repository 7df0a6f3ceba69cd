import { words } from '../language/words.ts';

/** Signs of formulas that the typeface of the sheets lacks, and what stands for them there. */
const PLAIN: Readonly<Record<string, string>> = {
  '√': 'sqrt ',
  '≤': '<=',
  '→': 'to',
  ℓ: 'l',
  ᵢ: 'i',
  ₓ: 'x',
  '⁴': '^4',
  '⁵': '^5',
  '⁻': '^-',
  ...Object.fromEntries([...'₀₁₂₃₄₅₆₇₈₉'].map((sign, digit) => [sign, String(digit)])),
};

/** What is rounded to whole numbers: alone on its side of the formula, or beside more of it. */
const ALONE = /(?<=^|= )(?:⌈([^⌈⌉]*)⌉|⌊([^⌊⌋]*)⌋)(?=,|$)/gu;
const AMONG = /⌈([^⌈⌉]*)⌉|⌊([^⌊⌋]*)⌋/gu;

const rounded = (up: string | undefined, down: string | undefined): string =>
  up === undefined ? words('sheet.rounded-down', { of: down ?? '' }) : words('sheet.rounded-up', { of: up });

/** 'V/V_u, rounded up to a whole number' for ⌈V/V_u⌉; in brackets where more of the formula stands beside it. */
const roundedInWords = (formula: string): string =>
  formula
    .replace(ALONE, (_, up: string | undefined, down: string | undefined) => rounded(up, down))
    .replace(AMONG, (_, up: string | undefined, down: string | undefined) => `(${rounded(up, down)})`);

/** A formula in letters that the sheets can print: 'h = (s + n e + l m)/60', 'n = V/V_u, rounded up to a whole number'. */
export const formulaText = (formula: string): string =>
  [...roundedInWords(formula)].map((sign) => PLAIN[sign] ?? sign).join('');
