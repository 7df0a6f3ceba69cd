import type { Units } from '../job/job.ts';
import type { Finding } from '../plan/finding.ts';
import { dayWords } from './day-words.ts';
import { bandName } from './en/inputs.ts';
import { findings } from './en/findings.ts';
import { fieldName } from './field-name.ts';
import { formatClosely } from './length-format.ts';
import { formatMeasured, formatPlusMinus } from './quantity-format.ts';
import { wordsOf } from './words.ts';

type FindingData = Readonly<Record<string, number | string>>;

/** Placeholders whose value is a key of the catalogue. */
const KEYED = [
  'check',
  'band',
  'way',
  'mandrel',
  'making',
  'obstacle',
  'tooling',
  'standard',
  'keepOut',
  'load',
  'doubt',
];

/** Likewise, where their keys begin otherwise: a line of the quote, or the operation of one. */
const KEYED_AS: Readonly<Record<string, string>> = { line: 'quote' };

/** Placeholders whose value is a day, ISO 8601. */
const DAYS = ['date', 'from', 'until'];

/** Placeholders whose value is a ± or a part of one: never told as a fraction of an inch. */
const BANDS = ['band', 'part'];

const keyWords = (area: string, key: string, data: FindingData): string =>
  area === 'band' ? bandName(key) : wordsOf(area, key, data);

/** Whether there are words for a code that only a plan knows. */
export const isFindingCode = (code: string): code is Finding['code'] => Object.hasOwn(findings, code);

/** Drops each [part] whose placeholders have no data, and fills the others; {name:mm} is a length. */
function filled(text: string, data: FindingData, units: Units): string {
  const fillOne = (part: string): string =>
    part.replace(/\{(\w+)(:mm)?\}/g, (_, name: string, length: string | undefined) => {
      const value = data[name];
      if (value === undefined) return '';
      if (length !== undefined && typeof value === 'number')
        return (BANDS.includes(name) ? formatPlusMinus : formatMeasured)(value, 'mm', units);
      if (DAYS.includes(name)) return dayWords(String(value));
      const area = KEYED_AS[name] ?? (KEYED.includes(name) ? name : undefined);
      return area === undefined ? String(value) : keyWords(area, String(value), data);
    });
  return text.replace(/\[([^\]]*)\]/g, (_, part: string) => {
    const names = [...part.matchAll(/\{(\w+)(?::mm)?\}/g)].map((found) => found[1] ?? '');
    return names.every((name) => data[name] !== undefined) ? fillOne(part) : '';
  });
}

/** 'hoop, bend 2' from what the finding says about its place; empty where it says nothing. */
function placeOf({ member, bend, bends, joint, chamber }: FindingData): string {
  const numbered = (name: string, number: string | number | undefined): string =>
    number === undefined || number === 0 || number === '' ? '' : `${name} ${String(number)}`;
  const several = typeof bends === 'string' && bends.includes(',') ? 'bends' : 'bend';
  return [
    member === undefined ? '' : String(member),
    numbered('bend', bend),
    numbered(several, bends),
    numbered('joint', joint),
    numbered('chamber', chamber),
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/**
 * A finding in words: the field, the place, the fact, the value, what is allowed, and what can be done.
 * 'Wall: the wall is so thick … It is 25.0 mm; at most 19.0 mm. Type a thinner wall.'
 */
export function describeFinding(finding: Finding, units: Units): string {
  const { text, unit, out, measured } = findings[finding.code];
  const { value, low, high } = finding.data;
  const measuredAs = (amount: number): string =>
    (measured.includes('±') ? formatPlusMinus : formatMeasured)(amount, unit, units);
  // a value beside its limit would be said as that limit: then both are said as closely as a caliper reads
  const beside =
    unit === 'mm' &&
    typeof value === 'number' &&
    [low, high].some(
      (limit) => typeof limit === 'number' && limit !== value && measuredAs(limit) === measuredAs(value),
    );
  const say = (amount: number | string): string =>
    typeof amount === 'string' ? amount : beside ? formatClosely(amount, units) : measuredAs(amount);
  const one = low !== undefined && low === high;
  const limits = one
    ? [`it should be ${say(low)}`]
    : [low === undefined ? '' : `at least ${say(low)}`, high === undefined ? '' : `at most ${say(high)}`].filter(
        (part) => part !== '',
      );
  const measure = [value === undefined ? '' : `${measured} ${say(value)}`, limits.join(', ')].filter(
    (part) => part !== '',
  );
  const sentence = measure.join('; ');
  const name = finding.field === '' ? '' : fieldName(finding.field);
  const head = [name, placeOf(finding.data)].filter((part) => part !== '').join(', ');
  const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
  return [
    head === '' ? filled(text, finding.data, units) : `${capital(head)}: ${filled(text, finding.data, units)}`,
    sentence === '' ? '' : `${capital(sentence)}.`,
    out,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
