import type { Rates, TubeRate, TubeSize } from '../../job/rates.ts';
import type { CutPiece } from '../../plan/stock.ts';

/** Size and grade of a bar: only bars that have both alike are cut into the same pieces. */
export type BarKind = TubeSize & { readonly grade: string };

/** Two sizes that differ by less are one [mm]: a thousandth, far under any tolerance of a tube; our own choice. */
const SAME_SIZE = 1e-3;

export const isSameSize = (one: TubeSize, other: TubeSize): boolean =>
  Math.abs(one.outsideDiameter - other.outsideDiameter) <= SAME_SIZE && Math.abs(one.wall - other.wall) <= SAME_SIZE;

export const isSameKind = (one: BarKind, other: BarKind): boolean =>
  one.grade === other.grade && isSameSize(one, other);

/** The pieces of each size and grade, in the order of the cut list. */
export function bySize(pieces: readonly CutPiece[]): { readonly kind: BarKind; readonly pieces: CutPiece[] }[] {
  const sizes: { kind: BarKind; pieces: CutPiece[] }[] = [];
  for (const piece of pieces) {
    const { outsideDiameter, wall, grade } = piece;
    const own = sizes.find(({ kind }) => isSameKind(kind, piece));
    if (own === undefined) sizes.push({ kind: { outsideDiameter, wall, grade }, pieces: [piece] });
    else own.pieces.push(piece);
  }
  return sizes;
}

/** The price of a size: its own row, else the row for all that have none; with the field that holds it. */
export function tubeRateOf({ tubes }: Pick<Rates, 'tubes'>, size: TubeSize): { rate: TubeRate | null; field: string } {
  const own = tubes.findIndex((row) => row.size !== null && isSameSize(row.size, size));
  const index = own >= 0 ? own : tubes.findIndex((row) => row.size === null);
  return { rate: tubes[index] ?? null, field: index < 0 ? '/rates/tubes' : `/rates/tubes/${String(index)}` };
}
