import { tick } from 'svelte';

const isSeen = (element: HTMLElement): boolean => element.getClientRects().length > 0;

/** What of a place can be reached: the element itself, or the line that folds it away. */
function reachable(element: HTMLElement): HTMLElement | undefined {
  if (isSeen(element)) return element;
  for (let fold = element.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) {
    const line = fold.querySelector<HTMLElement>(':scope > summary');
    if (line !== null && isSeen(line)) return line;
  }
  return undefined;
}

const first = (selector: string): HTMLElement | null => document.querySelector<HTMLElement>(selector);

/** The button that takes a row out carries its list and its place, the button that adds one the list. */
const takeOut = (list: string, index: number): string =>
  `[data-list="${CSS.escape(list)}"][data-place="${String(index)}"] [data-action="edit.remove"]`;
const adding = (list: string): string => `[data-adds="${CSS.escape(list)}"]:not(:disabled)`;

/** After a row is gone the caret goes to the button of the row in its place, of the last row, or to the one that adds. */
export async function focusAfterRemoval(list: string, index: number): Promise<void> {
  await tick();
  const found = first(takeOut(list, index)) ?? first(takeOut(list, index - 1)) ?? first(adding(list));
  if (found !== null) reachable(found)?.focus();
}

/** A caret that was in a part of the page and lost its field goes to the heading of the part. */
export async function focusIfLost(heading: string): Promise<void> {
  await tick();
  if (document.activeElement === null || document.activeElement === document.body) first(heading)?.focus();
}
