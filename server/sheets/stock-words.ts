import { dayWords } from '../language/day-words.ts';
import type { StockLayout } from '../job/stock.ts';
import { words } from '../language/words.ts';
import type { SizeLayout } from '../plan/stock.ts';

/** How the bars of a size were found, whether fewer could do, and whether they have been taken. */
export function layoutWords(size: SizeLayout, layout: StockLayout | null): string {
  switch (size.from) {
    case 'none':
      return words('sheet.stock-no-bars');
    case 'first-fit':
      return size.proven
        ? words('sheet.stock-first-fit-proven')
        : words('sheet.stock-first-fit', { count: size.least?.value ?? 0 });
    case 'kept':
      return [
        layout === null || layout.date === ''
          ? words('sheet.stock-from.kept-undated')
          : words('sheet.stock-from.kept', { date: dayWords(layout.date) }),
        words(size.proven ? 'sheet.stock-proven' : 'sheet.stock-best-so-far'),
        ...taken(size, layout),
      ].join(' ');
  }
}

function taken({ bars }: SizeLayout, layout: StockLayout | null): string[] {
  if (layout === null || bars.every(({ stock }) => stock === '')) return [];
  return layout.taken === null
    ? [words('sheet.stock-not-taken')]
    : [words('sheet.stock-taken', { number: layout.taken })];
}
