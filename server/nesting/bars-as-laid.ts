import type { LaidBar } from '../job/stock.ts';
import type { CutBars } from './cut-bars.ts';
import type { BarSource, SizeToCut, WantedPiece } from './sizes-to-cut.ts';

/** A piece where it is cut, with the job that it is for: an empty id is this job. */
export type PieceLaid = Omit<WantedPiece, 'count'>;

/** Bars that are cut alike, with what is cut from each, the longest piece first. */
export type BarLaid = Omit<LaidBar, 'pieces'> &
  Pick<BarSource, 'isReckoned'> & { readonly pieces: readonly PieceLaid[] };

/** How many bars an answer has that are not there; 0: all are. */
export const barsMissing = ({ sources }: SizeToCut, { cuts }: CutBars): number =>
  cuts.reduce((sum, { bar, times }) => sum + ((sources[bar]?.length ?? 0) === 0 ? times : 0), 0);

/** Things of one kind in the order in which they are given out; how many are left of each. */
type Queue<Thing> = { readonly thing: Thing; left: number }[];

const queueOf = <Thing extends { readonly count: number | null }>(things: readonly Thing[]): Queue<Thing> =>
  things.map((thing) => ({ thing, left: thing.count ?? Infinity }));

/**
 * The bars of an answer, every piece by its name. Pieces of a length are given out job by job, so that as few bars as may
 * be hold pieces of two; bars of a kind row by row of the stock. Bars that come out alike are one entry.
 */
export function barsAsLaid({ wanted, sources, task }: SizeToCut, { cuts }: CutBars): BarLaid[] {
  const pieces = wanted.map(queueOf);
  const rows = sources.map(queueOf);
  const longestFirst = task.pieces
    .map((_, index) => index)
    .sort((a, b) => (task.pieces[b]?.length ?? 0) - (task.pieces[a]?.length ?? 0));
  const laid = new Map<string, { bar: BarLaid; times: number }>();
  for (const { bar, counts, times } of cuts) {
    const order = longestFirst.filter((index) => (counts[index] ?? 0) > 0);
    for (let open = times; open > 0;) {
      const row = rows[bar]?.find(({ left }) => left > 0);
      if (row === undefined) break;
      const wantedOf = (index: number) => ({ queue: pieces[index] ?? [], count: counts[index] ?? 0 });
      const alike = Math.min(open, row.left, ...order.map((index) => alikeFrom(wantedOf(index))));
      const own = order.flatMap((index) => given(wantedOf(index), alike));
      row.left -= alike;
      open -= alike;
      together(laid, { ...barOf(row.thing), times: alike, pieces: own });
    }
  }
  return [...laid.values()].map(({ bar, times }) => ({ ...bar, times }));
}

type Wanted = { readonly queue: Queue<WantedPiece>; readonly count: number };

/** How many bars one after the other get the same pieces of a length: as long as the first in the line lasts. */
function alikeFrom({ queue, count }: Wanted): number {
  const first = queue.find(({ left }) => left > 0);
  return first === undefined ? 1 : Math.max(1, Math.floor(first.left / count));
}

/** The pieces of a length for each of some bars that are cut alike. */
function given({ queue, count }: Wanted, bars: number): PieceLaid[] {
  const pieces: PieceLaid[] = [];
  while (pieces.length < count) {
    const first = queue.find(({ left }) => left > 0);
    if (first === undefined) break;
    // where more than one bar is alike, the first in the line has enough for all
    const each = Math.min(count - pieces.length, bars > 1 ? count : first.left);
    const { count: _count, ...piece } = first.thing;
    for (let more = 0; more < each; more += 1) pieces.push(piece);
    first.left -= each * bars;
  }
  return pieces;
}

const barOf = ({ count: _count, ...bar }: BarSource): Omit<BarLaid, 'times' | 'pieces'> => bar;

function together(laid: Map<string, { bar: BarLaid; times: number }>, bar: BarLaid): void {
  const key = JSON.stringify([bar.stock, bar.length, bar.pieces.map(({ id, name, length }) => [id, name, length])]);
  const same = laid.get(key);
  if (same === undefined) laid.set(key, { bar, times: bar.times });
  else same.times += bar.times;
}
