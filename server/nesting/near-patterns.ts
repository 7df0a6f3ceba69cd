import type { Aim, Worths } from './aim.ts';
import { roomsOf, weightsOf, type Pattern } from './cutting-task.ts';
import { eachFilling } from './fillings.ts';

/** So many looks for each kind of bar, in a search of all patterns; our own choice. */
const LOOKS = 2_000_000;

/**
 * All patterns that cost no more than `margin` above what their pieces are worth: an answer that is better than the
 * relaxed one and `margin` has no others. Where they are more than `most`, only the best are told.
 *
 * @returns the patterns, and the margin that they are all of the patterns of
 */
export function nearPatterns(
  aim: Aim,
  worths: Worths,
  { margin, most }: { readonly margin: number; readonly most: number },
): { readonly patterns: Pattern[]; readonly margin: number } {
  const { task } = aim;
  const weights = weightsOf(task);
  const limits = task.pieces.map(({ count }) => count);
  let within = margin;
  let kept: { readonly pattern: Pattern; readonly over: number }[] = [];
  const drop = (): void => {
    kept.sort((a, b) => a.over - b.over);
    const left = kept[most];
    if (left === undefined) return;
    // of those that are as much over as the first that is left out, others may be left out too
    within = Math.min(within, left.over * (1 - 1e-9) - 1e-9);
    kept = kept.slice(0, most);
  };
  for (;;) {
    const all = roomsOf(task).every((room, bar) => {
      const needed = worths.bars[bar] ?? 0;
      return eachFilling({ values: worths.pieces, weights, limits }, room, {
        least: () => needed - within - 1e-9,
        looks: LOOKS,
        tell({ value, counts }) {
          kept.push({ pattern: { bar, counts }, over: needed - value });
          if (kept.length > 2 * most) drop();
        },
      });
    });
    if (kept.length > most) drop();
    if (all || within <= 0) return { patterns: kept.map(({ pattern }) => pattern), margin: all ? within : 0 };
    within = within > 1e-6 ? within / 4 : 0;
    kept = [];
  }
}
