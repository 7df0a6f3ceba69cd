/** What may be laid into a bar: what each piece is worth, what it takes, and how many there may be of it. */
export type Choice = {
  readonly values: ArrayLike<number>;
  readonly weights: readonly number[];
  readonly limits: readonly number[];
};

/** Differences of worth that are rounding. */
const ROUNDING = 1e-9;

/** How long a filling may be looked for: so many looks, and until the time is over. */
export type Patience = { readonly looks: number; readonly isOver: () => boolean };

/** The clock is read once in so many looks, so that reading it takes no time; our own choice. */
const BETWEEN_CLOCKS = 1024;

/** Whether somebody who has looked so often has to give up. */
const isSpent = (looks: number, { looks: most, isOver }: Patience): boolean =>
  looks > most || (looks % BETWEEN_CLOCKS === 0 && isOver());

export type Filling = { readonly value: number; readonly counts: number[] };

/** Pieces by what they are worth for what they take, the best first; those of no worth last. */
const byWorth = ({ values, weights }: Choice): number[] =>
  weights
    .map((_, index) => index)
    .sort((a, b) => (values[b] ?? 0) * (weights[a] ?? 0) - (values[a] ?? 0) * (weights[b] ?? 0) || a - b);

/** What no filling is worth more than: the best pieces first, a part of the last. */
function mostWorth({ values, weights, limits }: Choice, order: readonly number[], room: number): number {
  let left = room;
  let worth = 0;
  for (const index of order) {
    const weight = weights[index] ?? 1;
    const count = Math.min(limits[index] ?? 0, left / weight);
    worth += count * (values[index] ?? 0);
    left -= count * weight;
    if (left <= 0) break;
  }
  return worth;
}

/**
 * The filling of a bar that is worth most, where one is worth more than `above`: a bounded knapsack, depth first, the most
 * of the best piece first. `sure` is false where the search was given up; `most` is what no filling is worth more than.
 */
export function bestFilling(
  choice: Choice,
  room: number,
  { above, patience }: { readonly above: number; readonly patience: Patience },
): { readonly filling: Filling | null; readonly sure: boolean; readonly most: number } {
  const { values, weights, limits } = choice;
  const order = byWorth(choice).filter((index) => (values[index] ?? 0) > 0 && (limits[index] ?? 0) > 0);
  const lightest = lightestFrom(order, weights);
  const counts = weights.map(() => 0);
  let best = above;
  let found: number[] | null = null;
  let looks = 0;
  let isGivenUp = false;
  const look = (depth: number, left: number, value: number): void => {
    if (value > best + ROUNDING) {
      best = value;
      found = [...counts];
    }
    const index = order[depth];
    if (index === undefined || left < (lightest[depth] ?? 0) || isGivenUp) return;
    looks += 1;
    isGivenUp = isSpent(looks, patience);
    const worth = values[index] ?? 0;
    const weight = weights[index] ?? 1;
    const next = order[depth + 1];
    const rate = next === undefined ? 0 : (values[next] ?? 0) / (weights[next] ?? 1);
    for (let count = Math.min(limits[index] ?? 0, Math.floor(left / weight)); count >= 0; count -= 1) {
      const rest = left - count * weight;
      const gained = value + count * worth;
      // fewer of this piece only make what can still be reached less
      if (gained + rate * rest <= best + ROUNDING) break;
      counts[index] = count;
      look(depth + 1, rest, gained);
    }
    counts[index] = 0;
  };
  look(0, room, 0);
  return {
    filling: found === null ? null : { value: best, counts: found },
    sure: !isGivenUp,
    most: isGivenUp ? Math.max(best, mostWorth(choice, order, room)) : best,
  };
}

/** The lightest of the pieces from each place in the order on. */
function lightestFrom(order: readonly number[], weights: readonly number[]): number[] {
  const lightest: number[] = [];
  let least = Infinity;
  for (let depth = order.length - 1; depth >= 0; depth -= 1) {
    least = Math.min(least, weights[order[depth] ?? 0] ?? Infinity);
    lightest[depth] = least;
  }
  return lightest;
}

/**
 * Every filling that nothing more goes into and that is worth at least `least()`, which may rise while they are told.
 *
 * @returns how many looks it took; Infinity: it was given up, and not all were told
 */
export function eachFilling(
  choice: Choice,
  room: number,
  asked: { readonly least: () => number; readonly tell: (filling: Filling) => void; readonly patience: Patience },
): number {
  const { values, weights, limits } = choice;
  const order = byWorth(choice).filter((index) => (limits[index] ?? 0) > 0);
  const counts = weights.map(() => 0);
  let looks = 0;
  const isFull = (left: number): boolean =>
    order.every((index) => (counts[index] ?? 0) >= (limits[index] ?? 0) || (weights[index] ?? 0) > left);
  const look = (depth: number, left: number, value: number): void => {
    looks = isSpent(looks + 1, asked.patience) ? Infinity : looks + 1;
    if (looks === Infinity) return;
    const index = order[depth];
    if (index === undefined) {
      if (isFull(left) && value >= asked.least()) asked.tell({ value, counts: [...counts] });
      return;
    }
    const worth = values[index] ?? 0;
    const weight = weights[index] ?? 1;
    const next = order[depth + 1];
    const rate = next === undefined ? 0 : (values[next] ?? 0) / (weights[next] ?? 1);
    for (let count = Math.min(limits[index] ?? 0, Math.floor(left / weight)); count >= 0; count -= 1) {
      const rest = left - count * weight;
      const gained = value + count * worth;
      if (gained + rate * rest < asked.least()) break;
      counts[index] = count;
      look(depth + 1, rest, gained);
    }
    counts[index] = 0;
  };
  look(0, room, 0);
  return looks;
}
