import type { Units } from '../job/job.ts';
import { sizeWords } from '../language/size-words.ts';
import { hasWords, words, wordsOf } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Plan } from '../plan/plan.ts';
import type { QuoteLine, QuoteOption } from '../plan/quote.ts';
import type { SheetInput } from './sheet-input.ts';
import { capital } from './text-block.ts';

type Scope = QuoteOption['scope'];

/** What is priced: a way, or the frame as wanted. */
export const scopeName = (scope: Scope): string =>
  scope === 'frame' ? words('sheet.quote-frame') : wordsOf('way', scope);

/** The same in few words, for a column. */
export const scopeShort = (scope: Scope): string =>
  scope === 'frame' ? words('sheet.quote-frame') : wordsOf('wayShort', scope);

/** The way that an option prices; undefined for the frame as wanted. */
export const wayOf = ({ correction }: Plan, scope: Scope): Way | undefined =>
  correction?.ways.find(({ key }) => key === scope);

/** A line with what tells it apart from others of its key: 'tube: Ø 38.1 × 1.5', 'machine: bending'. */
export function lineName({ key, of, size }: Pick<QuoteLine, 'key' | 'of' | 'size'>, units: Units): string {
  const line = wordsOf('quote', key);
  if (size !== null) return words('sheet.line-of', { line, of: sizeWords(size, units) });
  return of === '' ? line : words('sheet.line-of', { line, of: hasWords(`quote.${of}`) ? wordsOf('quote', of) : of });
}

/** '2, issued 2026-11-26', or that nobody was given it. */
export const issuedWords = ({ issued }: SheetInput): string =>
  issued === null || issued === undefined
    ? words('sheet.quote-draft')
    : words('sheet.quote-issued', { number: issued.number, date: issued.issuedAt.slice(0, 10) });

/** Things named one after the other. */
export const listed = (names: readonly string[]): string => [...new Set(names)].join(', ');

/** 'price for 3 frames'. */
export const priceFor = (count: number): string =>
  capital(count === 1 ? words('sheet.quote-price-one') : words('sheet.quote-price-for', { count }));
