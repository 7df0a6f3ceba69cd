import { Type, type Static } from 'typebox';
import { Check, Errors } from 'typebox/value';
import { QuotePlan } from '../plan/quote.ts';
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

/** The form that quotes are written in. What went out stays word for word: another form is another number. */
export const QUOTE_VERSION = 1;

/** A quote as it was written in a form, or in words why it cannot be read. */
export function parseIssuedQuote(
  value: unknown,
  version: number,
): { readonly ok: true; readonly quote: QuotePlan } | { readonly ok: false; readonly reason: string } {
  if (version !== QUOTE_VERSION)
    return {
      ok: false,
      reason: `it was written in form ${String(version)}, and this program reads form ${String(QUOTE_VERSION)}`,
    };
  if (Check(QuotePlan, value)) return { ok: true, quote: value };
  const [first] = Errors(QuotePlan, value);
  return { ok: false, reason: first === undefined ? '' : `${first.instancePath} ${first.message}` };
}
