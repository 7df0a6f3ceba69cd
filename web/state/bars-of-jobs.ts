import type { LaidBar, StockLayout } from '../../server/job/stock.ts';
import type { Taking } from '../../server/job/stock-row.ts';

/** The same bars with every piece named: those of the job itself by its name. */
export const named = (bars: readonly LaidBar[], own: string): LaidBar[] =>
  bars.map((bar) => ({ ...bar, pieces: bar.pieces.map((piece) => ({ ...piece, job: piece.job || own })) }));

/** Bars that a job has a piece on. */
export const barsOn = (bars: readonly LaidBar[], name: string): LaidBar[] =>
  bars.filter(({ pieces }) => pieces.some(({ job }) => job === name));

/** The names of the other jobs on the bars of a layout. */
export const othersOn = ({ bars }: StockLayout): string[] => [
  ...new Set(bars.flatMap(({ pieces }) => pieces.flatMap(({ job }) => (job === '' ? [] : [job])))),
];

/** How often each kind of bar is cut: by its row, its tube and what is cut from it. */
function countsOf(bars: readonly LaidBar[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { stock, outsideDiameter, wall, grade, length, heat, times, pieces } of bars) {
    const on = pieces.map((piece) => [piece.name, piece.length, piece.job]);
    const key = JSON.stringify([stock, outsideDiameter, wall, grade, length, heat, on]);
    counts.set(key, (counts.get(key) ?? 0) + times);
  }
  return counts;
}

/** Whether these are the same bars with the same pieces, in whichever order they stand. */
export function areSameBars(some: readonly LaidBar[], others: readonly LaidBar[]): boolean {
  const [one, other] = [countsOf(some), countsOf(others)];
  return one.size === other.size && [...one].every(([key, count]) => other.get(key) === count);
}

/** Whether the bars of a job are among those of a taking, as the job sees them. */
export function isTakenIn({ jobId, together, layout: taken }: Taking, id: string, layout: StockLayout): boolean {
  if (together.length === 0) return jobId === id && areSameBars(taken.bars, layout.bars);
  const own = together.find((one) => one.id === id);
  return own !== undefined && areSameBars(barsOn(taken.bars, own.name), named(layout.bars, own.name));
}
