type Part = { readonly member: string; readonly from: number; readonly to: number };

/** Lengths of what parts leave uncovered of some stretches, but for rounding. */
export const gapsIn = (stretches: readonly Part[], covered: readonly Part[]): number[] =>
  stretches.flatMap(({ member, from, to }) => {
    const own = covered
      .filter((one) => one.member === member)
      .map((one) => [Math.min(one.from, one.to), Math.max(one.from, one.to)] as const)
      .sort((a, b) => a[0] - b[0]);
    let reached = Math.min(from, to);
    const gaps: number[] = [];
    for (const [low, high] of [...own, [Math.max(from, to), Infinity] as const]) {
      if (low - reached > 1e-3) gaps.push(low - reached);
      reached = Math.max(reached, high);
    }
    return gaps;
  });
