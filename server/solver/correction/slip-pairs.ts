import type { Misreading } from './misreadings.ts';

/** Pairs that are bent at the most, the commonest first; our own choice. */
const MOST_PAIRS = 120;

/**
 * Two slips together: the second on top of what the first made of sketch, marks and tube, never their differences added
 * up. Slips that cannot both happen make no pair, and one bend turned over is seen without a tape.
 *
 * @param found single slips
 * @returns made one by one as they are asked for
 */
export function* slipPairs(found: readonly Misreading[]): Generator<Misreading> {
  const single = found.filter(({ slips, made }) => made !== null && slips[0].key !== 'bend-other-way');
  let count = 0;
  // the two commonest first: by the sum of their places
  for (let sum = 1; sum <= 2 * single.length - 3; sum += 1) {
    for (let place = Math.max(0, sum - single.length + 1); 2 * place < sum; place += 1) {
      const [one, other] = [single[place], single[sum - place]];
      if (one === undefined || other === undefined || one.excludes.some((what) => other.excludes.includes(what)))
        continue;
      if (count === MOST_PAIRS) return;
      count += 1;
      const [first, second] = one.order <= other.order ? [one, other] : [other, one];
      yield {
        slips: [first.slips[0], second.slips[0]],
        excludes: [...first.excludes, ...second.excludes],
        order: second.order,
        made: first.made === null ? null : second.after(first.made),
        after: (before) => {
          const made = first.after(before);
          return made === null ? null : second.after(made);
        },
      };
    }
  }
}
