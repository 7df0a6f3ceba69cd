import type { LaidBar } from '../job/stock.ts';
import type { CutBars } from './cut-bars.ts';
import type { SizeToCut, WantedPiece } from './sizes-to-cut.ts';

/** A piece where it is cut, with the job that it is for: an empty id is this job. */
export type PieceLaid = { readonly id: string; readonly title: string; readonly name: string; readonly length: number };

/** A bar with what is cut from it, the longest piece first. */
export type BarLaid = Omit<LaidBar, 'pieces'> & { readonly pieces: readonly PieceLaid[] };

/** How many bars an answer has that are not there; 0: all are. */
export const barsMissing = ({ sources }: SizeToCut, { cuts }: CutBars): number =>
  cuts.reduce((sum, { bar, times }) => sum + ((sources[bar]?.length ?? 0) === 0 ? times : 0), 0);

/**
 * The bars of an answer one by one, every piece by its name. Pieces of a length are given out job by job, so that as few
 * bars as may be hold pieces of two; bars of a kind row by row of the stock.
 */
export function barsAsLaid({ wanted, sources, task }: SizeToCut, { cuts }: CutBars): BarLaid[] {
  const pieces = wanted.map(oneByOne);
  const bars = sources.map((alike) => alike.flatMap((source) => repeated(source, source.count)));
  const longestFirst = task.pieces
    .map((_, index) => index)
    .sort((a, b) => (task.pieces[b]?.length ?? 0) - (task.pieces[a]?.length ?? 0));
  return cuts.flatMap(({ bar, counts, times }) =>
    Array.from({ length: times }, (): BarLaid[] => {
      // the one source that never runs out stands last and alone
      const source = bars[bar]?.shift() ?? sources[bar]?.find(({ count }) => count === null);
      if (source === undefined) return [];
      const { count: _, ...laid } = source;
      const own = longestFirst.flatMap((index) => pieces[index]?.splice(0, counts[index] ?? 0) ?? []);
      return [{ ...laid, pieces: own }];
    }).flat(),
  );
}

const repeated = <Thing>(thing: Thing, count: number | null): Thing[] =>
  Array.from({ length: count ?? 0 }, () => thing);

const oneByOne = (wanted: readonly WantedPiece[]): PieceLaid[] =>
  wanted.flatMap(({ count, ...piece }) => repeated(piece, count));
