import type { CutBars } from './cut-bars.ts';
import type { CuttingTask } from './cutting-task.ts';

/** What the process that seeks bars is given: the pieces of each size and grade, and how long it may take [s]. */
export type NestingTask = { readonly sizes: readonly CuttingTask[]; readonly seconds: number };

/** What it tells: that its time goes on from now, the best so far of one size, or that it has done all it could. */
export type NestingNews =
  | { readonly kind: 'begun' }
  | { readonly kind: 'best'; readonly size: number; readonly best: CutBars }
  | { readonly kind: 'too-few'; readonly size: number }
  | { readonly kind: 'done' };
