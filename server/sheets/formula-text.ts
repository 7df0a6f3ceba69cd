/** Signs of formulas that the typeface of the sheets lacks, and what stands for them there. */
const PLAIN: Readonly<Record<string, string>> = {
  '⌈': 'roundup(',
  '⌉': ')',
  '⌊': 'rounddown(',
  '⌋': ')',
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

/** A formula in letters that the sheets can print: 'h = (s + n e + l m)/60', 'k rounddown(p/k)'. */
export const formulaText = (formula: string): string => [...formula].map((sign) => PLAIN[sign] ?? sign).join('');
