import type { Units } from '../job/job.ts';
import type { QuoteLine, QuoteOption } from '../plan/quote.ts';
import { sizeWords } from './size-words.ts';
import { words, wordsOf } from './words.ts';

type Scope = QuoteOption['scope'];

/** What is priced: a way, or the frame as wanted. */
export const scopeName = (scope: Scope): string =>
  scope === 'frame' ? words('price.optionFrame') : wordsOf('way', scope);

/** The same in few words, for a column. */
export const scopeShort = (scope: Scope): string =>
  scope === 'frame' ? words('price.optionFrame') : wordsOf('wayShort', scope);

/** A line with what tells it apart from others of its key: 'tube: 38.1 × 1.65 mm, 316L', 'machine: bending'. */
export function lineName({ key, of, size }: Pick<QuoteLine, 'key' | 'of' | 'size'>, units: Units): string {
  const line = wordsOf('quote', key);
  if (size !== null) return words('price.lineOf', { line, of: sizeWords(size, units) });
  if (of === '') return line;
  return words('price.lineOf', { line, of: key === 'machine' ? wordsOf('quote', of) : of });
}
