import type { Rates, TubeRate } from '../../job/rates.ts';
import type { Stock } from '../../job/stock.ts';
import type { CutPiece } from '../../plan/stock.ts';

export type TubeNeed = {
  readonly outsideDiameter: number;
  readonly wall: number;
  readonly grade: string;
  readonly pieces: readonly { readonly name: string; readonly length: number; readonly count: number }[];
  readonly metres: number;
  readonly rate: TubeRate | null;
  readonly field: string;
  readonly bars: { readonly count: number; readonly keptMetres: number } | null;
  readonly kept: { readonly amount: number | null; readonly bars: number } | null;
};

export function tubeNeeds({ pieces, quantity, rates }: { readonly pieces: readonly CutPiece[]; readonly quantity: number; readonly rates: Rates; readonly stock: Stock }): TubeNeed[] {
  const sizes = Map.groupBy(pieces, ({ outsideDiameter, wall, grade }) => `${String(outsideDiameter)} ${String(wall)} ${grade}`);
  return [...sizes.values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const { outsideDiameter, wall, grade } = first;
    const place = rates.tubes.findIndex(({ size }) => size === null || (size.outsideDiameter === outsideDiameter && size.wall === wall));
    const list = own.map(({ name, length, count }) => ({ name, length: length.value, count: count * quantity }));
    const metres = list.reduce((sum, { length, count }) => sum + length * count, 0) / 1000;
    const rate = rates.tubes[place] ?? null;
    return [
      {
        outsideDiameter, wall, grade, pieces: list, metres, rate,
        field: place < 0 ? '/rates/tubes' : `/rates/tubes/${String(place)}`,
        bars: rate === null ? null : { count: Math.ceil((1000 * metres) / rate.barLength), keptMetres: 0 },
        kept: null,
      },
    ];
  });
}
