import type { BarPlan } from '../plan/stock.ts';

/** Bars that are cut alike, shown once. */
export type BarGroup = { readonly bar: BarPlan; readonly numbers: readonly number[] };

/** All that a person at the saw would see of a bar, its number apart. */
const seen = ({ name, stock, remnant, length, heat, endTrim, pieces, offcut, kept }: BarPlan): string =>
  JSON.stringify([name, stock, remnant, length, heat, endTrim, pieces, offcut.value, kept]);

/** Bars in their order; each with the numbers of all that are cut like it. */
export function barGroups(bars: readonly BarPlan[]): BarGroup[] {
  const groups = new Map<string, BarGroup>();
  for (const bar of bars) {
    const key = seen(bar);
    const group = groups.get(key) ?? { bar, numbers: [] };
    groups.set(key, { bar: group.bar, numbers: [...group.numbers, bar.number] });
  }
  return [...groups.values()];
}

/** '1–3, 5'. */
export function numbersWords(numbers: readonly number[]): string {
  const runs: { from: number; to: number }[] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && number === last.to + 1) last.to = number;
    else runs.push({ from: number, to: number });
  }
  return runs
    .map(({ from, to }) => (from === to ? String(from) : `${String(from)}${to === from + 1 ? ', ' : '–'}${String(to)}`))
    .join(', ');
}

/** A piece as it is found with a tape that is hooked on the trimmed end [mm]. */
export type OnTape = { readonly name: string; readonly job: string; readonly from: number; readonly to: number };

/** The pieces of a bar in the order in which they are sawn; the first one begins at the trimmed end, where the tape is hooked. */
export function onTape({ pieces }: BarPlan): OnTape[] {
  const [first] = pieces;
  const hooked = first?.from ?? 0;
  return pieces.map((piece) => ({ ...piece, from: piece.from - hooked, to: piece.to - hooked }));
}
