import type { Aim, Worths } from './aim.ts';
import { roomsOf, weightsOf, type Pattern } from './cutting-task.ts';
import { eachFilling } from './fillings.ts';

/** So many looks in a search of all patterns, and how often it is tried again with a narrower margin; our own choice. */
const LOOKS = 1_000_000;
const TRIES = 4;

/**
 * All patterns that cost no more than `margin` above what their pieces are worth: an answer that is better than the
 * relaxed one and `margin` has no others. Where they are more than `most`, only the best are told.
 *
 * @returns the patterns, and the margin that they are all of the patterns of; null where there are too many to look at
 */
export function nearPatterns(
  aim: Aim,
  worths: Worths,
  { margin, most, isOver }: { readonly margin: number; readonly most: number; readonly isOver: () => boolean },
): { readonly patterns: Pattern[]; readonly margin: number | null } {
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
  for (let tries = 1; ; tries += 1) {
    let looks = LOOKS;
    const all = roomsOf(task).every((room, bar) => {
      const needed = worths.bars[bar] ?? 0;
      looks -= eachFilling({ values: worths.pieces, weights, limits }, room, {
        least: () => needed - within - 1e-9,
        patience: { looks, isOver },
        tell({ value, counts }) {
          kept.push({ pattern: { bar, counts }, over: needed - value });
          if (kept.length > 2 * most) drop();
        },
      });
      return looks >= 0;
    });
    if (kept.length > most) drop();
    if (all || tries >= TRIES || isOver())
      return { patterns: kept.map(({ pattern }) => pattern), margin: all ? within : null };
    within /= 4;
    kept = [];
  }
}
