import { dayWords } from '../language/day-words.ts';
import { words } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Plan } from '../plan/plan.ts';
import type { QuoteOption } from '../plan/quote.ts';
import type { SheetInput } from './sheet-input.ts';
import { capital } from './text-block.ts';

type Scope = QuoteOption['scope'];

/** The way that an option prices; undefined for the frame as wanted. */
export const wayOf = ({ correction }: Plan, scope: Scope): Way | undefined =>
  correction?.ways.find(({ key }) => key === scope);

/** '2, issued 2026-11-26', or that nobody was given it. */
export const issuedWords = ({ issued }: SheetInput): string =>
  issued === null || issued === undefined
    ? words('sheet.quote-draft')
    : words('sheet.quote-issued', { number: issued.number, date: dayWords(issued.issuedAt.slice(0, 10)) });

/** Things named one after the other. */
export const listed = (names: readonly string[]): string => [...new Set(names)].join(', ');

/** 'price for 3 frames'. */
export const priceFor = (count: number): string =>
  capital(count === 1 ? words('sheet.quote-price-one') : words('sheet.quote-price-for', { count }));
