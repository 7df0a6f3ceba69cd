import type { Refusal } from './check-value.ts';
import type { Allowed, JobProblem } from './problem.ts';

/** Longest part of a given text that is said back. */
const SHOWN_CHARACTERS = 60;

/** What was given, short enough to be said back. */
export function shortValue(value: unknown): JobProblem['value'] {
  if (typeof value === 'string') {
    const characters = [...value.slice(0, 2 * SHOWN_CHARACTERS + 1)];
    return characters.length > SHOWN_CHARACTERS ? `${characters.slice(0, SHOWN_CHARACTERS).join('')}…` : value;
  }
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  if (typeof value === 'boolean' || value === null) return value;
  if (Array.isArray(value)) return `a list of ${String(value.length)}`;
  return typeof value === 'object' ? 'an object' : typeof value;
}

function saidBack(value: unknown): string {
  if (typeof value === 'string') return `the text "${String(shortValue(value))}"`;
  return value === null ? 'empty' : String(shortValue(value));
}

const withUnit = (amount: number, unit: string | undefined): string =>
  unit === undefined || unit === 'ratio' ? String(amount) : `${String(amount)} ${unit}`;

/** 'more than 0 mm, at most 40 mm' */
function rangeWords({ low, lowOpen, high, highOpen, unit }: Allowed): string {
  return [
    low === undefined ? '' : `${lowOpen === true ? 'more than' : 'at least'} ${withUnit(low, unit)}`,
    high === undefined ? '' : `${highOpen === true ? 'less than' : 'at most'} ${withUnit(high, unit)}`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}

const optionWords = (options: Allowed['options'] = []): string =>
  options.map((option) => (option === null ? 'empty (null)' : String(option))).join(', ');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The last name of a JSON pointer, as it was written. */
const lastName = (field: string): string =>
  field
    .slice(field.lastIndexOf('/') + 1)
    .replaceAll('~1', '/')
    .replaceAll('~0', '~');

function sentence({ code, field, title, value, wanted, allowed }: Refusal): string {
  const name = capital(title);
  const range = rangeWords(allowed);
  const article = wanted === 'object' ? 'an' : 'a';
  switch (code) {
    case 'wrong-type': {
      const kind = wanted === 'true or false' ? wanted : `${article} ${wanted}`;
      const form = range === '' || wanted === 'list' || wanted === 'text' ? kind : `${kind}, ${range}`;
      return `${name} is ${saidBack(value)}; it takes ${form}. Give it that.`;
    }
    case 'below-range':
      return `${name} is ${saidBack(value)}; allowed is ${range || 'a finite number'}. Give a larger value.`;
    case 'above-range':
      return `${name} is ${saidBack(value)}; allowed is ${range || 'a finite number'}. Give a smaller value.`;
    case 'not-whole':
      return `${name} is ${saidBack(value)}; it takes a whole number, ${range}. Leave the decimals out.`;
    case 'not-one-of':
      return `${name} is ${saidBack(value)}; it takes one of: ${optionWords(allowed.options)}. Choose one of these.`;
    case 'wrong-form':
      return `${name} is ${saidBack(value)}, which does not have the form of this field. Correct its spelling.`;
    case 'too-short':
      return `${name} has too little in it; allowed is ${range} ${wanted === 'text' ? 'characters' : 'entries'}. Add to it.`;
    case 'too-long':
      return `${name} has too much in it; allowed is ${range} ${wanted === 'text' ? 'characters' : 'entries'}. Shorten it.`;
    case 'missing-field': {
      const choice = allowed.options === undefined ? '' : `: one of ${optionWords(allowed.options)}`;
      return `${name} is missing. Add the field ${field} with ${article} ${wanted}${choice}.`;
    }
    case 'unknown-field':
      return `The field "${String(shortValue(lastName(field)))}" in ${title} is not known. Take it out; known are: ${optionWords(allowed.options)}.`;
    case 'not-a-job':
      return `This is ${saidBack(value)}, not a job of this program. Give a document with "format": "hoopwright-job" and a version.`;
    case 'newer-version':
      return `The job is of version ${saidBack(value)}; this program reads up to version ${String(allowed.high)}. Open it with a newer version of the program.`;
  }
}

/** A refusal with its words. */
export function describeProblem(refusal: Refusal): JobProblem {
  const { code, field, value, allowed } = refusal;
  return { code, field, value: shortValue(value), allowed, message: sentence(refusal) };
}
