import type { Units } from '../job/job.ts';
import { inputName } from '../language/en/inputs.ts';
import { unitWords } from '../language/en/units.ts';
import { formatFigure, formatQuantity, shownBand } from '../language/quantity-format.ts';
import { hasWords, words, wordsOf } from '../language/words.ts';
import type { Figure, Unit, WorkingInput } from '../plan/figure.ts';
import type { QuoteLine, QuotePart } from '../plan/quote.ts';
import { formulaText } from './formula-text.ts';
import type { Money } from './money.ts';

/** How amounts and sizes of a line are written. */
export type LineHow = { readonly money: Money; readonly units: Units };

/** '6 welds', '1 bar': a number with what is counted on its line. */
function countWords(key: string, count: string): string {
  const area = count === '1' ? 'one' : 'many';
  return hasWords(`${area}.${key}`) ? wordsOf(area, key, { count }) : count;
}

/** A quantity in its unit; what a percentage is taken of is money, and an amount that is reckoned has no quantity. */
export function quantityWords({ key, quantity, rateUnit }: QuoteLine, { money, units }: LineHow): string {
  if (quantity === null) return words('sheet.open');
  if (quantity.unit === 'minor') return rateUnit === 'percent' ? money.whole(quantity.value) : '';
  const said = formatFigure(quantity, units);
  return quantity.unit === 'count' ? countWords(key, said) : said;
}

/** A rate with what it is for: one unit of its line's quantity, or a percentage. */
export function rateWords({ rate, rateUnit, quantity }: QuoteLine, money: Money): string {
  if (rate === null) return '';
  if (rateUnit === 'percent') return words('sheet.rate-percent', { percent: Math.round(rate * 100) / 100 });
  const said = money.bare(rate);
  if (quantity === null) return said;
  const unit = unitWords[quantity.unit];
  return unit === '' ? words('sheet.rate-each', { rate: said }) : words('sheet.rate-of', { rate: said, unit });
}

/** 'piece hoop 2080.0 mm'. */
export function partWords({ key, name, value, unit }: QuotePart, how: LineHow): string {
  const part = wordsOf('part', key, { name });
  return words('sheet.line-part', {
    part: name === '' || part.includes(name) ? part : `${part} ${name}`,
    value: valueWords(value, unit, how),
  });
}

const valueWords = (value: number, unit: Unit, { money, units }: LineHow): string =>
  unit === 'minor' ? money.whole(value) : formatQuantity(value, unit, units);

/**
 * 'h = (s + n e)/60; s = 20.0 min (set-up), n = 2 (bends), …'. A formula that is but one of its inputs says nothing: then
 * the inputs stand by their names alone.
 */
export function reckonedWords(figure: Figure, how: LineHow): string {
  const { formula, inputs } = figure.working;
  const isPlain = inputs.length > 0 && !/[^\p{L}\p{N}_]/u.test(formula);
  const said = isPlain ? named(inputs, how) : withInputs(formulaText(formula), inputs, how);
  const band = shownBand(figure, how.units);
  return band === '' ? said : `${said}; ${band}`;
}

const named = (inputs: readonly WorkingInput[], how: LineHow): string =>
  inputs
    .map(({ name, value, unit }) =>
      words('sheet.line-named', { name: inputName(name), value: valueWords(value, unit, how) }),
    )
    .join('; ');

function withInputs(formula: string, inputs: readonly WorkingInput[], how: LineHow): string {
  const given = inputs
    .map(({ symbol, name, value, unit }) =>
      words('sheet.line-input', {
        symbol: formulaText(symbol),
        name: inputName(name),
        value: valueWords(value, unit, how),
      }),
    )
    .join(', ');
  return given === '' ? formula : words('sheet.line-inputs', { formula, inputs: given });
}
