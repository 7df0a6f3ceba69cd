import type { Finding } from '../../plan/finding.ts';
import type { QuoteLine, QuoteOption } from '../../plan/quote.ts';
import type { CutPiece } from '../../plan/stock.ts';
import { finding } from '../finding.ts';
import { sizeName } from './size-name.ts';

/** Times among the fields of a rate, with their operation: other lines that hang on one are not told for it. */
const A_TIME = /^\/rates\/labour\/(\w+)\/(?:setUp|each|perMetre)\/value$/;
/** Values that a person types; what else is missing has a finding where it belongs. */
const A_VALUE = /\/value$/;

/**
 * What keeps lines of an option open: every rate and every time that nobody typed, sizes of tube without a price, amounts
 * that are more than can be counted.
 */
export function openFindings({ lines, open }: QuoteOption, pieces: readonly CutPiece[]): Finding[] {
  const seen = new Set<string>();
  return open
    .flatMap((place) => {
      const line = lines[place];
      return line === undefined ? [] : openLine(line, pieces);
    })
    .filter(({ code, field, data }) => {
      // a machine's hours are its operation's: its missing times are told once
      const said = [code, field, data['outside'], data['wall']].join(' ');
      if (seen.has(said)) return false;
      seen.add(said);
      return true;
    });
}

function openLine({ key, missing, rateField, of }: QuoteLine, pieces: readonly CutPiece[]): Finding[] {
  if (missing.length === 0) return [finding('amount-out-of-range', 'caution', rateField, { line: key })];
  return missing.flatMap((field) => {
    if (field === '/rates/tubes') {
      const piece = pieces.find((one) => sizeName(one) === of);
      const data = piece === undefined ? {} : { outside: piece.outsideDiameter, wall: piece.wall };
      return [finding('tube-rate-missing', 'note', field, data)];
    }
    if (!A_VALUE.test(field)) return [];
    const operation = A_TIME.exec(field)?.[1];
    return operation === undefined
      ? [finding('rate-open', 'note', field, { line: key })]
      : [finding('time-open', 'note', field, { line: operation })];
  });
}
