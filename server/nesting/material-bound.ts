import type { Aim } from './aim.ts';
import { roomsOf, weightsOf } from './cutting-task.ts';

/** What is to be covered, by what bars of each kind give to it. */
type Cover = { readonly cost: number; readonly count: number; readonly gives: number };

/**
 * What no bars can come below, known at once: enough of them for all that is cut. Bars that cost least for what they give
 * are filled first (those that cost nothing before any other), as if tube could be joined at will. The same is asked of the
 * longer pieces alone, for each length that there is: only bars that take such a piece give to them, by their room and by
 * how many of them one takes.
 */
export function materialBound({ task, costs }: Aim): number {
  const rooms = roomsOf(task);
  const pieces = weightsOf(task).map((weight, index) => ({ weight, count: task.pieces[index]?.count ?? 0 }));
  let least = 0;
  for (const shortest of new Set(pieces.map(({ weight }) => weight))) {
    const longer = pieces.filter(({ weight }) => weight >= shortest);
    const covers = (gives: (room: number) => number): Cover[] =>
      task.bars.map(({ count }, bar) => {
        const room = rooms[bar] ?? 0;
        return { cost: costs[bar] ?? 0, count: count ?? Infinity, gives: room >= shortest ? gives(room) : 0 };
      });
    const together = longer.reduce((sum, { weight, count }) => sum + weight * count, 0);
    const number = longer.reduce((sum, { count }) => sum + count, 0);
    least = Math.max(
      least,
      leastCost(
        covers((room) => room),
        together,
      ),
      leastCost(
        covers((room) => Math.floor(room / shortest)),
        number,
      ),
    );
  }
  return least;
}

/** What it costs at least to cover so much, parts of a bar allowed; where all bars do not, what they cost. */
function leastCost(covers: readonly Cover[], wanted: number): number {
  const cheapest = covers
    .filter(({ gives }) => gives > 0)
    .sort((a, b) => a.cost * b.gives - b.cost * a.gives || b.gives - a.gives);
  let open = wanted;
  let sum = 0;
  for (const { cost, count, gives } of cheapest) {
    if (open <= 0) break;
    const bars = Math.min(count, open / gives);
    sum += bars * cost;
    open -= bars * gives;
  }
  return sum;
}
