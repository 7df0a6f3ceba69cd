import { roomsOf, sumOver, timesWithin, weightsOf, type Cut, type CuttingTask } from './cutting-task.ts';
import { bestFilling } from './fillings.ts';

/** So many looks for what leaves least of a bar over: it is one of many, and the next ones make good for it; our own choice. */
const LOOKS = 20_000;

/** What is still wanted of each piece and left of each kind of bar; Infinity: as many as are wanted. */
type Open = { readonly pieces: number[]; readonly bars: number[] };

/** What a bar is filled with, seen from what is still open. */
type Filler = (room: number, open: Open) => number[];

/** The longest first, as many of it as go in. */
function longestFirst(task: CuttingTask): Filler {
  const weights = weightsOf(task);
  const order = weights.map((_, index) => index).sort((a, b) => (weights[b] ?? 0) - (weights[a] ?? 0) || a - b);
  return (room, { pieces }) => {
    const counts = weights.map(() => 0);
    let left = room;
    for (const index of order) {
      const count = Math.min(pieces[index] ?? 0, Math.floor(left / (weights[index] ?? 1)));
      counts[index] = count;
      left -= count * (weights[index] ?? 0);
    }
    return counts;
  };
}

/**
 * What leaves least of the bar over; the longest piece that is still open and fits goes in first, so that the long ones
 * are not what is left in the end.
 */
function leastOver(task: CuttingTask, isOver: () => boolean): Filler {
  const weights = weightsOf(task);
  const atOnce = longestFirst(task);
  return (room, open) => {
    if (isOver()) return atOnce(room, open);
    const { pieces } = open;
    const fits = (index: number): boolean => (pieces[index] ?? 0) > 0 && (weights[index] ?? 0) <= room;
    const first = weights.reduce(
      (longest, weight, index) => (fits(index) && weight > (weights[longest] ?? 0) ? index : longest),
      -1,
    );
    const counts = weights.map(() => 0);
    if (first < 0) return counts;
    const limits = pieces.map((count, index) => count - (index === first ? 1 : 0));
    const patience = { looks: LOOKS, isOver };
    const { filling } = bestFilling({ values: weights, weights, limits }, room - (weights[first] ?? 0), {
      above: 0,
      patience,
    });
    filling?.counts.forEach((count, index) => (counts[index] = count));
    counts[first] = (counts[first] ?? 0) + 1;
    return counts;
  };
}

/**
 * Lays what is open bar by bar: always the bar that costs least for what it gives, the one with least over among equals,
 * cut alike as often as that goes. null where bars run out.
 */
function lay(task: CuttingTask, open: Open, fill: Filler): Cut[] | null {
  const weights = weightsOf(task);
  const rooms = roomsOf(task);
  const taken = (counts: readonly number[]): number =>
    counts.reduce((sum, count, index) => sum + count * (weights[index] ?? 0), 0);
  const cuts: Cut[] = [];
  while (open.pieces.some((count) => count > 0)) {
    const fillings = task.bars.flatMap(({ cost }, bar) => {
      if ((open.bars[bar] ?? 0) <= 0) return [];
      const room = rooms[bar] ?? 0;
      const counts = fill(room, open);
      const takes = taken(counts);
      return takes === 0 ? [] : [{ bar, counts, rate: cost / takes, used: takes / room }];
    });
    const [first] = fillings.sort((a, b) => a.rate - b.rate || b.used - a.used || a.bar - b.bar);
    if (first === undefined) return null;
    const { bar, counts } = first;
    const times = Math.min(timesWithin(counts, open.pieces), open.bars[bar] ?? 0);
    cuts.push({ bar, counts, times });
    counts.forEach((count, index) => (open.pieces[index] = (open.pieces[index] ?? 0) - count * times));
    open.bars[bar] = (open.bars[bar] ?? 0) - times;
  }
  return cuts;
}

const openOf = (task: CuttingTask): Open => ({
  pieces: task.pieces.map(({ count }) => count),
  bars: task.bars.map(({ count }) => count ?? Infinity),
});

/**
 * Some bars that do, given some that are cut already: an answer to start from. Empty: there are none.
 *
 * @param isOver the second answer is left out where the time does not do; the first takes none to speak of
 */
export function laidGreedily(task: CuttingTask, isOver: () => boolean, begun: readonly Cut[] = []): Cut[][] {
  const answers: Cut[][] = [];
  for (const fill of [longestFirst(task), leastOver(task, isOver)]) {
    if (answers.length > 0 && isOver()) break;
    const open = openOf(task);
    for (const { bar, counts, times } of begun) {
      counts.forEach((count, index) => (open.pieces[index] = (open.pieces[index] ?? 0) - count * times));
      open.bars[bar] = (open.bars[bar] ?? 0) - times;
    }
    const laid = lay(task, open, fill);
    if (laid !== null) answers.push([...begun, ...laid]);
  }
  return answers;
}

/**
 * Answers near to amounts that are not whole: each amount cut to whole bars, up where its part is at least as much as one
 * of several limits, and the rest laid greedily. Each is told as soon as it is there.
 */
export function laidNear(
  task: CuttingTask,
  amounts: readonly Cut[],
  { isOver, tell }: { readonly isOver: () => boolean; readonly tell: (cuts: readonly Cut[]) => void },
): void {
  const part = (times: number): number => times - Math.floor(times + 1e-9);
  const limits = [...new Set(amounts.map(({ times }) => part(times)))].filter((limit) => limit > 1e-6);
  const sorted = [...amounts].sort((a, b) => part(b.times) - part(a.times));
  for (const limit of [Infinity, ...limits.sort((a, b) => b - a).slice(0, 12)]) {
    if (isOver()) return;
    const open = openOf(task);
    const begun: Cut[] = [];
    for (const { bar, counts, times } of sorted) {
      const wanted = Math.floor(times + 1e-9) + (part(times) >= limit ? 1 : 0);
      const fits = Math.min(wanted, timesWithin(counts, open.pieces), open.bars[bar] ?? 0);
      if (fits === 0) continue;
      begun.push({ bar, counts, times: fits });
      counts.forEach((count, index) => (open.pieces[index] = (open.pieces[index] ?? 0) - count * fits));
      open.bars[bar] = (open.bars[bar] ?? 0) - fits;
    }
    for (const cuts of laidGreedily(task, isOver, begun)) tell(cuts);
  }
}

/** The answer that comes to least. */
export const leastOf = (answers: readonly (readonly Cut[])[], of: (bar: number) => number): readonly Cut[] | null =>
  answers.reduce<readonly Cut[] | null>(
    (least, cuts) => (least === null || sumOver(cuts, of) < sumOver(least, of) ? cuts : least),
    null,
  );
