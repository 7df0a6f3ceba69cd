import type { BarPlan } from '../plan/stock.ts';

/** '4', '1, 2', '1–3': the numbers of bars that are cut alike. */
export function numbersWords({ number, times }: Pick<BarPlan, 'number' | 'times'>): string {
  const last = number + times - 1;
  if (times <= 2) return times === 1 ? String(number) : `${String(number)}, ${String(last)}`;
  return `${String(number)}–${String(last)}`;
}

/** A piece as it is found with a tape that is hooked on the trimmed end [mm]. */
export type OnTape = { readonly name: string; readonly job: string; readonly from: number; readonly to: number };

/** The pieces of a bar in the order in which they are sawn; the first one begins at the trimmed end, where the tape is hooked. */
export function onTape({ pieces }: BarPlan): OnTape[] {
  const [first] = pieces;
  const hooked = first?.from ?? 0;
  return pieces.map((piece) => ({ ...piece, from: piece.from - hooked, to: piece.to - hooked }));
}
