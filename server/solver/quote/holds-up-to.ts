/**
 * The greatest whole number up to which something holds that holds at the least one. Looked for in steps that double, then
 * by halving the step in which it stops; of several such places it is one of the first.
 *
 * @param range least and most, both looked at
 * @param holds null: it cannot be told there
 * @returns null where it holds all along, and where it cannot be told
 */
export function holdsUpTo(
  { least, most }: { readonly least: number; readonly most: number },
  holds: (at: number) => boolean | null,
): number | null {
  let low = least;
  let high: number | null = null;
  for (let step = 1; low < most; step *= 2) {
    const next = Math.min(most, least + 2 * step - 1);
    const held = holds(next);
    if (held === null) return null;
    if (!held) {
      high = next;
      break;
    }
    low = next;
  }
  if (high === null) return null;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    const held = holds(middle);
    if (held === null) return null;
    if (held) low = middle;
    else high = middle;
  }
  return low;
}
