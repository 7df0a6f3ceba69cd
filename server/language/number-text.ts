/** Why a text is not a number. The page has words for each (`number.<code>`). */
export const NUMBER_PROBLEMS = ['empty', 'not-a-number', 'comma-unclear', 'too-many-digits'] as const;
export type NumberProblem = (typeof NUMBER_PROBLEMS)[number];

export type NumberText =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly code: NumberProblem };

const failure = (code: NumberProblem): NumberText => ({ ok: false, code });

/** A plain number with its decimal point or comma, an exponent allowed and the unit's sign ignored: '90°', '8,5 L/min'. */
export function parseNumber(text: string): NumberText {
  const plain = text.trim().replace(/[\u2212\u2013]/g, '-');
  if (plain === '') return failure('empty');
  const found = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d{1,2})?)\s*(?:[°%]|\p{L}[\p{L}\d/²³·]*)?$/iu.exec(plain);
  const digits = found?.[1];
  if (digits === undefined) return failure('not-a-number');
  if (/^[+-]?[1-9]\d{0,2},\d{3}$/.test(digits)) return failure('comma-unclear');
  const value = Number(digits.replace(',', '.'));
  return Number.isFinite(value) ? { ok: true, value: value === 0 ? 0 : value } : failure('not-a-number');
}

/**
 * An amount of money in minor units, exact: the digits are moved, never multiplied.
 *
 * @param text '12.50', '12,5', '1200'
 * @param minorDigits decimal digits of the currency, 0 to 3
 */
export function parseMoney(text: string, minorDigits: number): NumberText {
  const plain = text.trim();
  if (plain === '') return failure('empty');
  const found = /^(?:[A-Z]{3}\s*)?(\d{1,12})(?:[.,](\d*))?(?:\s*[A-Z]{3})?$/.exec(plain);
  const whole = found?.[1];
  if (whole === undefined) return failure('not-a-number');
  const part = found?.[2] ?? '';
  if (part.replace(/0+$/, '').length > minorDigits) {
    return failure(part.length === 3 && plain.includes(',') ? 'comma-unclear' : 'too-many-digits');
  }
  return { ok: true, value: Number(whole + part.slice(0, minorDigits).padEnd(minorDigits, '0')) };
}
