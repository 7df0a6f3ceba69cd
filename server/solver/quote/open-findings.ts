import type { Finding } from '../../plan/finding.ts';
import type { QuoteLine, QuoteOption } from '../../plan/quote.ts';
import { finding } from '../finding.ts';

/** Times among the fields of a rate, with their operation: other lines that hang on one are not told for it. */
const A_TIME = /^\/rates\/labour\/(\w+)\/(?:setUp|each|perMetre)\/value$/;
/** Values that a person types; what else is missing has a finding where it belongs. */
const A_VALUE = /\/value$/;

/** What of a line tells why it is open; `frames`: for how many it is so, where those are not the first quantity. */
type OpenLine = Pick<QuoteLine, 'key' | 'rateField' | 'size'> & {
  readonly missing: readonly string[];
  readonly frames?: number;
};

/**
 * What keeps lines of an option open: every rate and every time that nobody typed, sizes of tube without a price, amounts
 * that are more than can be counted. Each is told once.
 *
 * @param later lines that are open for another quantity than the first
 */
export function openFindings({ lines, open }: QuoteOption, later: readonly OpenLine[]): Finding[] {
  const seen = new Set<string>();
  return [...open.flatMap((place) => lines[place] ?? []), ...later]
    .flatMap(openLine)
    .filter(({ code, field, data }) => {
      // a machine's hours are its operation's: its missing times are told once
      const said = [code, field, data['outside'], data['wall']].join(' ');
      if (seen.has(said)) return false;
      seen.add(said);
      return true;
    });
}

function openLine({ key, missing, rateField, size, frames }: OpenLine): Finding[] {
  if (missing.length === 0) {
    const data = { line: key, ...(frames === undefined ? {} : { frames }) };
    return [finding('amount-out-of-range', 'caution', rateField, data)];
  }
  return missing.flatMap((field) => {
    if (field === '/rates/tubes') {
      const data = size === null ? {} : { outside: size.outsideDiameter, wall: size.wall };
      return [finding('tube-rate-missing', 'note', field, data)];
    }
    if (!A_VALUE.test(field)) return [];
    const operation = A_TIME.exec(field)?.[1];
    return operation === undefined
      ? [finding('rate-open', 'note', field, { line: key })]
      : [finding('time-open', 'note', field, { line: operation })];
  });
}
