import type { SawSettings } from '../../job/rates.ts';
import type { LaidBar } from '../../job/stock.ts';
import type { BarPlan, PieceOnBar } from '../../plan/stock.ts';
import { figure, input } from '../figure.ts';
import { barUse } from './bar-use.ts';

/** A bar of a size that is known. */
export type BarAsLaid = Omit<LaidBar, 'outsideDiameter' | 'wall' | 'grade'>;

/** Bars cut alike with the pieces on each, as they are drawn: the first piece begins where the end is trimmed. */
export function barPlan(number: number, bar: BarAsLaid, saw: SawSettings): BarPlan {
  const { stock, name, remnant, length, heat, price, times } = bar;
  const lengths = bar.pieces.map((piece) => piece.length);
  // what does not fit is not laid, so that nothing is left where it seems to
  const { kerfs, offcut, kept } = barUse({ length, pieces: lengths }, saw) ?? { kerfs: 0, offcut: 0, kept: false };
  let at = saw.endTrim;
  const pieces = bar.pieces.map((piece): PieceOnBar => {
    const from = at;
    const to = from + piece.length;
    at = to + saw.kerf;
    return { name: piece.name, job: piece.job, from, to };
  });
  return {
    number,
    times,
    stock,
    name,
    remnant,
    length,
    heat,
    price,
    endTrim: saw.endTrim,
    pieces,
    offcut: figure(
      offcut,
      'mm',
      'o = B − t − Σ ℓ − Σ k',
      [
        input('B', 'bar', length, 'mm'),
        input('t', 'end-cut-off', saw.endTrim, 'mm'),
        input(
          'Σ ℓ',
          'pieces-together',
          lengths.reduce((sum, one) => sum + one, 0),
          'mm',
        ),
        input('Σ k', 'kerfs-together', kerfs, 'mm'),
      ],
      ['bar-bookkeeping'],
    ),
    kept,
  };
}
