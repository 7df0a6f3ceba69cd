/**
 * Whole numbers that are looked at: the least and the most, the number up to which each is looked at, and by how much the
 * steps grow from there on.
 */
export type Range = {
  readonly least: number;
  readonly closely: number;
  readonly most: number;
  readonly growth: number;
};

/**
 * Up to where something has a lead that it has at the least number; null: it never loses it. `wavers`: it was seen to win it
 * back above that.
 */
type Held = { readonly at: number | null; readonly wavers: boolean };

/**
 * The greatest whole number up to which something has a lead that it has at the least one. Every number is looked at up to
 * `closely`, then some in steps that grow; between the last two of them where a straight line through them would lose it, and
 * by halving in turns, until two numbers beside each other are left.
 *
 * @param lead 0 and more while it has it, less where it has not; null: it cannot be told
 * @returns null where it cannot be told
 */
export function holdsUpTo(range: Range, lead: (at: number) => number | null): Held | null {
  const { least, closely, most, growth } = range;
  const begun = lead(least);
  if (begun === null) return null;
  let low = { at: least, lead: begun };
  let lost: number | null = null;
  for (let step = 1; low.at < most;) {
    if (low.at >= closely) step *= growth;
    const at = Math.min(most, Math.max(low.at + 1, low.at + Math.round(step)));
    const found = lead(at);
    if (found === null) return null;
    if (lost !== null && found >= 0) return { at: lost, wavers: true };
    if (lost === null && found < 0) {
      lost = between(low, { at, lead: found }, lead);
      if (lost === null) return null;
    }
    low = { at, lead: found };
  }
  return { at: lost, wavers: false };
}

type Looked = { readonly at: number; readonly lead: number };

function between(from: Looked, to: Looked, lead: (at: number) => number | null): number | null {
  let [low, high] = [from, to];
  for (let turn = 0; high.at - low.at > 1; turn += 1) {
    const share = turn % 2 === 0 ? low.lead / (low.lead - high.lead) : 1 / 2;
    const guess = Math.floor(low.at + share * (high.at - low.at));
    const at = Math.min(high.at - 1, Math.max(low.at + 1, guess));
    const found = lead(at);
    if (found === null) return null;
    if (found < 0) high = { at, lead: found };
    else low = { at, lead: found };
  }
  return low.at;
}
