import type { Choice } from './quarters.ts';

/** A weld whose pull is chosen: what a turn towards its outside and its top does, each value weighed already. */
export type Mover = {
  readonly outside: readonly number[];
  readonly top: readonly number[];
  readonly choices: readonly Choice[];
};

/** A choice of a mover: which column of the products, and which share of it. */
type Option = { readonly column: number; readonly share: number; readonly choice: number };

/** So many welds are tried in every combination: 4⁶ = 4096. */
const MOST_TRIED = 6;

/** What is gained must be more than this share of what one weld does; rounding. Of equals the first stands. */
const GAIN = 1e-9;

/** Rounds of the search at most; each gains something, and few are needed. */
const MOST_ROUNDS = 20;

/**
 * The choice of every mover (by its place in its list) that makes the sum of squares least: every combination where
 * they are few, else one weld and then two at a time, until nothing is gained.
 */
export function balancedPulls(movers: readonly Mover[]): number[] {
  const columns = movers.flatMap(({ outside, top }) => [outside, top]);
  const count = columns.length;
  const products = new Float64Array(count * count);
  for (const [row, one] of columns.entries()) {
    for (let column = 0; column <= row; column += 1) {
      const other = columns[column] ?? [];
      let sum = 0;
      for (let index = 0; index < one.length; index += 1) sum += (one[index] ?? 0) * (other[index] ?? 0);
      products[row * count + column] = sum;
      products[column * count + row] = sum;
    }
  }
  const product = (one: number, other: number): number => products[one * count + other] ?? 0;
  const options = movers.map(({ choices }, mover) =>
    choices.map(({ outside, top }, choice): Option =>
      outside === 0 ? { column: 2 * mover + 1, share: top, choice } : { column: 2 * mover, share: outside, choice },
    ),
  );
  const least = GAIN * columns.reduce((most, _, at) => Math.max(most, product(at, at)), 0);
  const found = movers.length <= MOST_TRIED ? tried(options, product, least) : searched(options, product, least);
  return found.map(({ choice }) => choice);
}

type Product = (one: number, other: number) => number;

/** What an option adds to the sum of squares beside others. */
function added({ column, share }: Option, beside: readonly Option[], product: Product): number {
  let cost = share * share * product(column, column);
  for (const one of beside) cost += 2 * share * one.share * product(column, one.column);
  return cost;
}

/** Depth first; all pulls turned round give the same, so that the first weld has one way along each generator. */
function tried(options: readonly (readonly Option[])[], product: Product, least: number): Option[] {
  let best: { cost: number; chosen: Option[] } = { cost: Infinity, chosen: [] };
  const chosen: Option[] = [];
  const descend = (cost: number): void => {
    const depth = chosen.length;
    const own = options[depth] ?? [];
    // what the welds before do along this one's outside and its top
    let [outside, top] = [0, 0];
    for (const { column, share } of chosen) {
      outside += share * product(2 * depth, column);
      top += share * product(2 * depth + 1, column);
    }
    for (const option of depth === 0 ? own.filter(isFirstAlong) : own) {
      const { column, share } = option;
      const beside = column === 2 * depth ? outside : top;
      const all = cost + share * (2 * beside + share * product(column, column));
      if (depth < options.length - 1) {
        chosen.push(option);
        descend(all);
        chosen.pop();
      } else if (all < best.cost - least) best = { cost: all, chosen: [...chosen, option] };
    }
  };
  descend(0);
  return best.chosen;
}

const isFirstAlong = ({ column }: Option, index: number, all: readonly Option[]): boolean =>
  all.findIndex((one) => one.column === column) === index;

function searched(options: readonly (readonly Option[])[], product: Product, least: number): Option[] {
  const chosen: Option[] = [];
  const best = (own: readonly Option[], beside: readonly Option[], now?: Option): Option | undefined => {
    let found = now;
    let cost = now === undefined ? Infinity : added(now, beside, product);
    for (const option of own) {
      const other = added(option, beside, product);
      if (other < cost - least) [found, cost] = [option, other];
    }
    return found;
  };
  for (const own of options) {
    const option = best(own, chosen);
    if (option !== undefined) chosen.push(option);
  }
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    let gained = false;
    for (const [index, own] of options.entries()) {
      const now = chosen[index];
      const option = best(own, chosen.toSpliced(index, 1), now);
      if (option === undefined || option === now) continue;
      chosen[index] = option;
      gained = true;
    }
    if (!gained && !gainedByPairs(options, chosen, product, least)) break;
  }
  return chosen;
}

/** Changes two welds at a time where that gains something; true where it did. */
function gainedByPairs(
  options: readonly (readonly Option[])[],
  chosen: Option[],
  product: Product,
  least: number,
): boolean {
  // what all welds together do to every column
  const field = options.flatMap((_, mover) =>
    [2 * mover, 2 * mover + 1].map((column) =>
      chosen.reduce((sum, one) => sum + one.share * product(column, one.column), 0),
    ),
  );
  let gained = false;
  for (let first = 0; first < chosen.length; first += 1) {
    for (let second = first + 1; second < chosen.length; second += 1) {
      const [now, then] = [chosen[first], chosen[second]];
      if (now === undefined || then === undefined) continue;
      const alone = ({ column, share }: Option): number => {
        const others =
          (field[column] ?? 0) - now.share * product(column, now.column) - then.share * product(column, then.column);
        return share * (2 * others + share * product(column, column));
      };
      let [bestOne, bestOther] = [now, then];
      const cost = (one: Option, other: Option): number =>
        alone(one) + alone(other) + 2 * one.share * other.share * product(one.column, other.column);
      let lowest = cost(now, then);
      for (const one of options[first] ?? []) {
        for (const other of options[second] ?? []) {
          const found = cost(one, other);
          if (found < lowest - least) [bestOne, bestOther, lowest] = [one, other, found];
        }
      }
      if (bestOne === now && bestOther === then) continue;
      for (const [column, before] of field.entries()) {
        const more =
          bestOne.share * product(column, bestOne.column) +
          bestOther.share * product(column, bestOther.column) -
          now.share * product(column, now.column) -
          then.share * product(column, then.column);
        field[column] = before + more;
      }
      [chosen[first], chosen[second]] = [bestOne, bestOther];
      gained = true;
    }
  }
  return gained;
}
