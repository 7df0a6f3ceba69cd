import type { Grade, Tube } from '../../server/job/tube.ts';
import type { StockRow } from '../../server/job/stock-row.ts';

/** Outside diameter, wall and grade: what a bar must have in common with a piece that is cut from it. */
export type SizeAndGrade = { readonly outsideDiameter: number; readonly wall: number; readonly grade: string };

/** A grade by what it is called: the key of the catalogue, or the name of the shop's own. */
export const gradeName = (grade: Grade): string => (grade.from === 'own' ? grade.name : grade.key);

export const sizeOfTube = ({ outsideDiameter, wall, grade }: Tube): SizeAndGrade => ({
  outsideDiameter,
  wall,
  grade: gradeName(grade),
});

const byText = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** By size and grade, the longest first, bars before remnants of their length, then by name. */
export const sortedStock = (bars: readonly StockRow[]): readonly StockRow[] =>
  bars.toSorted(
    ({ document: one }, { document: other }) =>
      one.outsideDiameter - other.outsideDiameter ||
      one.wall - other.wall ||
      byText.compare(one.grade, other.grade) ||
      other.length - one.length ||
      Number(one.remnant) - Number(other.remnant) ||
      byText.compare(one.name, other.name),
  );

/** Two sizes that differ by less are one [mm], as the plan has it. */
const SAME_SIZE = 1e-3;

type Size = Omit<SizeAndGrade, 'grade'>;

const isSameSize = (one: Size, other: Size): boolean =>
  Math.abs(one.outsideDiameter - other.outsideDiameter) <= SAME_SIZE && Math.abs(one.wall - other.wall) <= SAME_SIZE;

/** Whether the one is cut from bars of the other. */
export const isSameTube = (one: SizeAndGrade, other: SizeAndGrade): boolean =>
  one.grade === other.grade && isSameSize(one, other);

/** Those that are of one of the sizes, whatever their grade: another grade of the same size is worth a look. */
export const ofSizes = (bars: readonly StockRow[], sizes: readonly Size[]): readonly StockRow[] =>
  bars.filter(({ document }) => sizes.some((size) => isSameSize(document, size)));

/** True for a bar that only its grade keeps from being cut for one of the sizes. */
export function isOtherGrade(bar: SizeAndGrade, sizes: readonly SizeAndGrade[]): boolean {
  const alike = sizes.filter((size) => isSameSize(bar, size));
  return alike.length > 0 && alike.every(({ grade }) => grade !== bar.grade);
}
