import type { StockBar, StockLayout } from '../job/stock.ts';
import { barUse } from '../solver/stock/bar-use.ts';
import { overfullBar } from './stock-refusals.ts';

/** A length without the rounding of the sum that it comes from [mm]. */
const micrometres = (length: number): number => Math.round(length * 1000) / 1000;

/** The offcuts that a layout leaves long enough to keep, in the order of its bars; nobody has said what each is worth. */
export function offcutsOf({ bars, saw, currency }: StockLayout): Omit<StockBar, 'name'>[] {
  return bars.flatMap(({ outsideDiameter, wall, grade, heat, length, pieces }, index) => {
    const use = barUse({ length, pieces: pieces.map((piece) => piece.length) }, saw);
    if (use === undefined) throw overfullBar(index + 1, length);
    const long = micrometres(use.offcut);
    const offcut = { outsideDiameter, wall, grade, heat, currency, length: long };
    return use.kept && long > 0 ? [{ ...offcut, remnant: true, count: 1, price: null }] : [];
  });
}
