import type { Job, Units } from '../../server/job/job.ts';
import { formatLength } from '../../server/language/length-format.ts';
import { words } from '../../server/language/words.ts';
import type { CutPiece, OverlongPiece, SizeLayout } from '../../server/plan/stock.ts';
import { barCount } from './nesting-words.ts';
import { barsTogether, type DrawnBar } from './stock-picture.ts';

/** What a piece is for: 'the whole member', 'length 1 of 2 of hoop', 'let in at joint 2', 'leg'. */
export function pieceFor({ kind, of, part, parts }: CutPiece): string {
  if (kind === 'length') return words('piece.for.length', { part, parts, member: of });
  return kind === 'let-in' ? words('piece.for.letIn', { joint: of }) : words(`piece.for.${kind}`);
}

/** '120 mm and 340 mm or between 600 mm and 800 mm' */
export const rangesWords = (ranges: OverlongPiece['joints'], units: Units): string =>
  ranges
    .map(({ from, to }) => words('barJoint.range', { from: formatLength(from, units), to: formatLength(to, units) }))
    .join(` ${words('barJoint.or')} `);

/** How the bars were found, and how far that is from the best that could be. */
export function foundWords(size: SizeLayout, layout: Job['stock']['layout']): string {
  const bars = barCount(barsTogether(size.bars));
  if (size.from === 'none') return words('stock.found.none');
  if (size.from === 'kept') {
    const key = size.proven ? 'stock.found.keptProven' : 'stock.found.keptBest';
    const said = words(key, { bars });
    return layout === null || layout.date === '' ? said : `${said} ${words('stock.found.on', { date: layout.date })}`;
  }
  if (size.proven) return words('stock.found.fewest', { bars });
  return size.least === null
    ? words('stock.found.firstFit', { bars })
    : words('stock.found.atLeast', { bars, least: size.least.value });
}

/** 'Bar 3', or 'Bars 3 to 7' where they look alike. */
export const barNumbers = ({ count, first, last }: DrawnBar): string =>
  count === 1 ? words('bar.number', { number: first }) : words('bar.numbers', { first, last, count });

/** What a bar is and where it comes from: '6000.0 mm, to be bought'. */
export function barWords({ length, bought, remnant, name, heat }: DrawnBar, units: Units): string {
  const from = bought ? words('bar.bought') : remnant ? words('bar.remnant') : words('bar.fromStock');
  return [
    formatLength(length, units),
    name === '' || bought ? from : `${from} “${name}”`,
    heat === '' ? '' : words('bar.heat', { heat }),
  ]
    .filter((part) => part !== '')
    .join(', ');
}
