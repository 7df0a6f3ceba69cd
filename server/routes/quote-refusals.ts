import type { Finding } from '../plan/finding.ts';
import { RequestError } from './request-error.ts';

export const unknownQuote = (id: string, number: string): RequestError =>
  new RequestError(
    404,
    'quote-unknown',
    `There is no quote ${number} of a job ${id}. Look for it in the list of quotes.`,
  );

export const staleQuote = (revision: number): RequestError =>
  new RequestError(
    409,
    'stale-quote',
    `Revision ${String(revision)} of this job is the latest now. No quote was issued. Look at it, and issue the quote from there.`,
  );

/** Something of the job stops the plan before its price. */
export function noQuote(findings: readonly Finding[]): RequestError {
  const { message = '' } = findings.find(({ grade }) => grade === 'stop') ?? {};
  return new RequestError(
    422,
    'quote-not-possible',
    `This job has no price yet, because something stops its plan. ${message}`.trim(),
  );
}
