import type { CuttingTask } from '../../server/nesting/cutting-task.ts';

/** What bars cost and how long they are together. */
type Sums = { readonly cost: number; readonly length: number };

const isLess = (one: Sums, other: Sums): boolean =>
  one.cost < other.cost || (one.cost === other.cost && one.length < other.length);

/**
 * The least cost, and the least length at that cost, by trying every way to share the pieces out over bars and every kind
 * of bar for each: nothing of the program in it. For a few pieces only. null: there are too few bars.
 */
export function everyWayToCut({ pieces, bars, kerf, endTrim }: CuttingTask): Sums | null {
  const all = pieces.flatMap(({ length, count }) => Array.from({ length: count }, () => length));
  let best: Sums | null = null;
  const fits = (group: readonly number[], length: number): boolean =>
    endTrim + group.reduce((sum, piece) => sum + piece, 0) + (group.length - 1) * kerf <= length;
  const choose = (groups: readonly (readonly number[])[], next: number, left: readonly number[], sums: Sums): void => {
    if (best !== null && !isLess(sums, best)) return;
    const group = groups[next];
    if (group === undefined) {
      best = sums;
      return;
    }
    bars.forEach(({ cost, length }, bar) => {
      if (left[bar]! <= 0 || !fits(group, length)) return;
      const after = left.map((count, index) => (index === bar ? count - 1 : count));
      choose(groups, next + 1, after, { cost: sums.cost + cost, length: sums.length + length });
    });
  };
  const share = (next: number, groups: number[][]): void => {
    const piece = all[next];
    if (piece === undefined) {
      choose(
        groups,
        0,
        bars.map(({ count }) => count ?? Infinity),
        { cost: 0, length: 0 },
      );
      return;
    }
    for (const group of groups) {
      group.push(piece);
      share(next + 1, groups);
      group.pop();
    }
    groups.push([piece]);
    share(next + 1, groups);
    groups.pop();
  };
  share(0, []);
  return best;
}
