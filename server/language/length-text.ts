import Fraction from 'fraction.js';

/** Units that a length can be typed in. */
export type LengthUnit = 'mm' | 'inch';

/** Why a text is not a length. The page has words for each (`length.<code>`). */
export const LENGTH_PROBLEMS = [
  'empty',
  'not-a-length',
  'zero-denominator',
  'two-units',
  'unknown-unit',
  'comma-unclear',
] as const;
export type LengthProblem = (typeof LENGTH_PROBLEMS)[number];

export type LengthText =
  { readonly ok: true; readonly mm: number } | { readonly ok: false; readonly code: LengthProblem };

/** Millimetres in one unit, as exact fractions; the inch is 25.4 mm by definition (international yard, 1959). */
const MILLIMETRES: Readonly<Record<string, Fraction>> = {
  mm: new Fraction(1),
  cm: new Fraction(10),
  m: new Fraction(1000),
  inch: new Fraction('25.4'),
  foot: new Fraction('304.8'),
};

const UNIT_WORDS: Readonly<Record<string, string>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'inch',
  'in.': 'inch',
  inch: 'inch',
  inches: 'inch',
  '"': 'inch',
  "'": 'foot',
  ft: 'foot',
  'ft.': 'foot',
  foot: 'foot',
  feet: 'foot',
};

const NUMBER = String.raw`\d+\s*(?:\s|-)\s*\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d+\.\d*|\.\d+|\d+`;
const UNIT = String.raw`[a-z]+\.?|["']`;
const PART = new RegExp(String.raw`^\s*-?\s*(${NUMBER})\s*(${UNIT})?\s*`, 'i');

/** One way of writing each sign: quotes, minus, fraction slash, and ½ as ' 1/2'. */
const plain = (text: string): string =>
  text
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign.normalize('NFKD')}`)
    .replaceAll('\u2044', '/')
    .replace(/[\u2032\u2019\u2018]/g, "'")
    .replace(/[\u2033\u201d\u201c]|''/g, '"')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();

const failure = (code: LengthProblem): LengthText => ({ ok: false, code });

/** '1 1/2', '1-1/2', '3/8', '1.25' as an exact fraction; null where the denominator is nothing. */
function fractionOf(text: string): Fraction | null {
  const [left = '', below] = text.split('/').map((part) => part.trim());
  if (below === undefined) return new Fraction(left.replace(/^\./, '0.').replace(/\.$/, ''));
  if (/^0+$/.test(below)) return null;
  const [above = '', whole = '0'] = left.split(/[\s-]+/).reverse();
  return new Fraction(whole).add(new Fraction(`${above}/${below}`));
}

/**
 * Reads a length as a person writes it: 38.1, 38,1 mm, 1 1/2, 1-1/2, 1½, 1 1/2 in, 3' 1 1/4", -12.5.
 *
 * A single comma is a decimal comma, except where it could just as well part thousands (1,500): that is refused
 * with `comma-unclear`, because a guess would be wrong by a factor of a thousand. Feet may be followed by inches;
 * no other two units may stand in one text.
 *
 * @param text what was typed
 * @param unit the unit of a number without one
 * @returns the length [mm], exact before the last rounding to a double, or why there is none
 */
export function parseLength(text: string, unit: LengthUnit): LengthText {
  let rest = plain(text);
  if (rest === '') return failure('empty');
  if (/^[+-]?[1-9]\d{0,2},\d{3}(?!\d)/.test(rest)) return failure('comma-unclear');
  if ((rest.match(/,/g) ?? []).length > 1 || (rest.includes(',') && rest.includes('.'))) return failure('not-a-length');
  rest = rest.replace(',', '.');
  const negative = rest.startsWith('-');
  rest = rest.replace(/^[+-]\s*/, '');

  const parts: { amount: Fraction; unit: string | null }[] = [];
  while (rest !== '') {
    const found = PART.exec(rest);
    const amountText = found?.[1];
    if (found === null || amountText === undefined || (parts.length === 0 && rest.startsWith('-'))) {
      return failure(parts.length > 0 && UNIT_WORDS[rest.trim()] !== undefined ? 'two-units' : 'not-a-length');
    }
    const amount = fractionOf(amountText);
    if (amount === null) return failure('zero-denominator');
    const word = found[2];
    const known = word === undefined ? null : UNIT_WORDS[word];
    if (known === undefined) return failure('unknown-unit');
    parts.push({ amount, unit: known });
    rest = rest.slice(found[0].length);
  }
  return sum(parts, unit, negative);
}

function sum(
  parts: readonly { amount: Fraction; unit: string | null }[],
  unit: LengthUnit,
  negative: boolean,
): LengthText {
  const [first, second] = parts;
  if (first === undefined || parts.length > 2) return failure('not-a-length');
  if (second !== undefined) {
    if (first.unit === null) return failure('not-a-length');
    if (first.unit !== 'foot' || (second.unit !== null && second.unit !== 'inch')) return failure('two-units');
  }
  let total = new Fraction(0);
  for (const part of parts) {
    const scale = MILLIMETRES[part.unit ?? (part === second ? 'inch' : unit)];
    if (scale === undefined) return failure('unknown-unit');
    total = total.add(part.amount.mul(scale));
  }
  const mm = total.valueOf();
  return { ok: true, mm: negative && mm !== 0 ? -mm : mm };
}
