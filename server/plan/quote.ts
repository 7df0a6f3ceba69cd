import { Type, type Static } from 'typebox';
import { Figure, literals } from './figure.ts';
import { WayKey } from './correction.ts';

export const QUOTE_LINES = ['tube', 'gas', 'filler', 'bend', 'cut', 'fit', 'purge', 'weld', 'finish'] as const;
export const QuoteLineKey = literals(QUOTE_LINES, 'line');
export type QuoteLineKey = (typeof QUOTE_LINES)[number];

/** One line: quantity × rate. A line whose rate or time is missing stands open: its amount is null, never zero. */
export const QuoteLine = Type.Object({
  key: QuoteLineKey,
  quantity: Type.Union([Figure, Type.Null()]),
  /** Minor units for one unit of the quantity. */
  rate: Type.Union([Type.Number(), Type.Null()]),
  rateField: Type.String(),
  amount: Type.Union([Type.Integer(), Type.Null()]),
});
export type QuoteLine = Static<typeof QuoteLine>;

export const QuotePlan = Type.Object({
  /** What is priced: the frame as wanted, or one way of putting it right. */
  scope: Type.Union([Type.Literal('frame'), WayKey]),
  currency: Type.String(),
  minorDigits: Type.Integer(),
  date: Type.String(),
  lines: Type.Array(QuoteLine),
  /** Sum of the lines that have an amount. */
  subtotal: Type.Integer(),
  /** Lines that stand open. */
  open: Type.Array(QuoteLineKey),
});
export type QuotePlan = Static<typeof QuotePlan>;
