import type { Job, Units } from '../job/job.ts';
import type { Said } from '../plan/readings-fit.ts';
import { numberForField } from './length-format.ts';
import { formatMoney, formatQuantity } from './quantity-format.ts';
import { hasWords, words, wordsOf, type WordKey } from './words.ts';

type Value = string | number | undefined;

/** How money is written; without it an amount is told in minor units. */
type Money = Pick<Job['rates'], 'currency' | 'minorDigits'>;

/** Placeholders whose value is itself a key of the catalogue, with the start of that key. */
const KEYED: Readonly<Record<string, string>> = {
  way: 'way',
  other: 'way',
  check: 'check',
  generator: 'generator',
  from: 'measuredFrom',
  end: 'choice.memberEnd',
  rule: 'keepOut',
  fromSpot: 'spot',
  toSpot: 'spot',
  atSpot: 'spot',
};

/** A placeholder's value as a person reads it: {name:mm} a length, {name:deg} an angle, {name:money} an amount. */
function shown(name: string, value: Value, unit: string | undefined, units: Units, money: Money | undefined): string {
  if (typeof value !== 'number') {
    const area = KEYED[name];
    return value === undefined || area === undefined ? (value ?? '') : wordsOf(area, value);
  }
  if (unit === 'mm' || unit === 'deg') return formatQuantity(value, unit, units);
  if (unit === 'money' && money !== undefined) return formatMoney(value, money.currency, money.minorDigits);
  return numberForField(value);
}

/** The text of a key without its placeholders filled; a key that the catalogue does not know reads as itself. */
const textOf = (key: string): string =>
  hasWords(key) ? (words as (one: WordKey) => string)(key) : wordsOf('', key.slice(key.indexOf('.') + 1));

/**
 * What the plan says by a language key, in words: lengths in the job's unit; a [part] whose placeholders have no data
 * is left out. { key: 'check.crossbar-from-foot', data: { index: 2 } } reads 'inner crossbar 2 from the left foot'.
 */
export const saidWords = ({ key, data }: Said, units: Units, money?: Money): string =>
  textOf(key)
    .replace(/\[([^\]]*)\]/g, (_, part: string) =>
      [...part.matchAll(/\{(\w+)/g)].every((found) => data[found[1] ?? ''] !== undefined) ? part : '',
    )
    .replace(/\{(\w+)(?::(\w+))?\}/g, (_, name: string, unit: string | undefined) =>
      shown(name, data[name], unit, units, money),
    );
