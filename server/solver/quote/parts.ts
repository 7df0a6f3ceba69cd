import type { QuotePart } from '../../plan/quote.ts';

/** What one frame's quantity is made of, for so many of them. */
export const severalOf = (parts: readonly QuotePart[] | undefined, quantity: number): QuotePart[] =>
  (parts ?? []).map(({ key, name, value, unit }) => ({ key, name, value: value * quantity, unit }));
