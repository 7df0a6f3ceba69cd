import type { Cut, CuttingTask, Pattern } from './cutting-task.ts';
import type { Column, Row } from './linear-solver.ts';

/** What is to come to least, and what must not come to more than so much meanwhile. Whole numbers for each kind of bar. */
export type Aim = {
  readonly task: CuttingTask;
  readonly costs: readonly number[];
  readonly limit: { readonly costs: readonly number[]; readonly most: number } | null;
};

/** The rows of the program: each piece as often as it is wanted, no more bars than there are, and the limit. */
export function rowsOf({ task, limit }: Aim): Row[] {
  return [
    ...task.pieces.map(({ count }) => ({ least: count, most: Infinity })),
    ...task.bars.flatMap(({ count }) => (count === null ? [] : [{ least: -Infinity, most: count }])),
    ...(limit === null ? [] : [{ least: -Infinity, most: limit.most }]),
  ];
}

/** Which row says how many there are of a kind of bar; null: as many as are wanted. */
function rowOfBar({ pieces, bars }: CuttingTask): (number | null)[] {
  let row = pieces.length;
  return bars.map(({ count }) => (count === null ? null : row++));
}

/** How patterns stand in the program. */
export function columnsOf(aim: Aim): (patterns: readonly Pattern[]) => Column[] {
  const barRows = rowOfBar(aim.task);
  const limitRow = rowsOf(aim).length - 1;
  return (patterns) =>
    patterns.map(({ bar, counts }) => {
      const entries = counts.flatMap((count, row) => (count > 0 ? [[row, count] as const] : []));
      const barRow = barRows[bar] ?? null;
      if (barRow !== null) entries.push([barRow, 1]);
      const counted = aim.limit?.costs[bar] ?? 0;
      if (counted > 0) entries.push([limitRow, counted]);
      return {
        cost: aim.costs[bar] ?? 0,
        rows: entries.map(([row]) => row),
        gives: entries.map(([, value]) => value),
      };
    });
}

/**
 * What a piece is worth and what a bar of each kind must be worth to be cut, from what one more in each row would cost;
 * `limit`: what one less of the limit would cost.
 */
export type Worths = {
  readonly pieces: number[];
  readonly bars: number[];
  readonly limit: number;
  readonly total: number;
};

/** The worths of the rows as those of pieces and bars; `total` is what no answer can come below. */
export function worthsOf(aim: Aim, ofRows: ArrayLike<number>): Worths {
  const { pieces, bars } = aim.task;
  const rows = rowsOf(aim);
  const barRows = rowOfBar(aim.task);
  // a piece too many is worth nothing, and a bar too few costs nothing
  const ofPieces = pieces.map((_, row) => Math.max(0, ofRows[row] ?? 0));
  const ofRow = (row: number): number => Math.min(0, ofRows[row] ?? 0);
  const ofLimit = aim.limit === null ? 0 : ofRow(rows.length - 1);
  const ofBars = bars.map((_, bar) => {
    const row = barRows[bar] ?? null;
    return (aim.costs[bar] ?? 0) - (row === null ? 0 : ofRow(row)) - ofLimit * (aim.limit?.costs[bar] ?? 0);
  });
  const total = rows.reduce(
    (sum, { least, most }, row) => sum + (row < pieces.length ? (ofPieces[row] ?? 0) * least : ofRow(row) * most),
    0,
  );
  return { pieces: ofPieces, bars: ofBars, limit: 0 - ofLimit, total };
}

/** Amounts of columns as cuts; those of nothing left out. */
export const cutsOf = (patterns: readonly Pattern[], amounts: ArrayLike<number>): Cut[] =>
  patterns.flatMap((pattern, index) => {
    const times = amounts[index] ?? 0;
    return times > 1e-9 ? [{ ...pattern, times }] : [];
  });
