import { Type, type Static } from 'typebox';
import { WAY_KEYS } from './closing.ts';

/** A quote that went out, as a list says it. Its number is its revision: they count from 1 for each job. */
export const IssuedQuote = Type.Object(
  {
    number: Type.Integer(),
    /** The save of the job that it was made from. */
    jobRevision: Type.Integer(),
    issuedAt: Type.String(),
    reference: Type.String(),
    date: Type.String(),
    validUntil: Type.String(),
    /** What was shown: the frame as wanted, or a way of putting it right; its total with tax [minor units]. */
    scope: Type.Union([Type.Literal('frame'), Type.Enum<[...typeof WAY_KEYS]>([...WAY_KEYS])]),
    total: Type.Integer(),
    currency: Type.String(),
    minorDigits: Type.Integer(),
    /** Lines without an amount, and lines that rest on examples. */
    open: Type.Integer(),
    examples: Type.Integer(),
  },
  { title: 'issued quote' },
);
export type IssuedQuote = Static<typeof IssuedQuote>;
