/** Whole numbers that are looked at: the least, the most, and by how much the steps grow in which they are gone through. */
export type Range = { readonly least: number; readonly most: number; readonly growth: number };

/**
 * The greatest whole number up to which something has a lead that it has at the least one. Looked for in steps that grow,
 * then between the last two: where a straight line through them would lose it, and by halving in turns, until two numbers
 * beside each other are left. Where the lead is lost and won back it is one of the places at which it is lost.
 *
 * @param lead 0 and more while it has it, less where it has not; null: it cannot be told
 * @returns 'always' where it never loses it, 'open' where it cannot be told
 */
export function holdsUpTo(
  { least, most, growth }: Range,
  lead: (at: number) => number | null,
): number | 'always' | 'open' {
  const begun = lead(least);
  if (begun === null) return 'open';
  let low = { at: least, lead: begun };
  for (let step = 1; low.at < most; step *= growth) {
    const at = Math.min(most, low.at + step);
    const found = lead(at);
    if (found === null) return 'open';
    if (found < 0) return between(low, { at, lead: found }, lead);
    low = { at, lead: found };
  }
  return 'always';
}

type Looked = { readonly at: number; readonly lead: number };

function between(from: Looked, to: Looked, lead: (at: number) => number | null): number | 'open' {
  let [low, high] = [from, to];
  for (let turn = 0; high.at - low.at > 1; turn += 1) {
    const share = turn % 2 === 0 ? low.lead / (low.lead - high.lead) : 1 / 2;
    const guess = Math.floor(low.at + share * (high.at - low.at));
    const at = Math.min(high.at - 1, Math.max(low.at + 1, guess));
    const found = lead(at);
    if (found === null) return 'open';
    if (found < 0) high = { at, lead: found };
    else low = { at, lead: found };
  }
  return low.at;
}
