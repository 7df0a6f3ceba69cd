import type { QuoteGroup, QuoteLineKey, QuoteOption } from '../../plan/quote.ts';
import type { PricedLine } from './priced-line.ts';

/** As a customer reads them. */
const GROUPS: readonly QuoteGroup[] = ['tube', 'gas-and-filler', 'bending', 'work', 'travel'];

/** Which group a line of what is bought and done belongs to; a machine goes with its operation. */
const GROUP_OF: Readonly<Partial<Record<QuoteLineKey, QuoteGroup>>> = {
  tube: 'tube',
  'remnant-credit': 'tube',
  gas: 'gas-and-filler',
  'bottle-rent': 'gas-and-filler',
  filler: 'gas-and-filler',
  bend: 'bending',
  'outside-bending': 'bending',
  travel: 'travel',
  'travel-time': 'travel',
};

/** Overhead, margin, rounding and tax are in every group. */
const PUT_ON: readonly QuoteLineKey[] = ['overhead', 'margin', 'rounding', 'tax'];

const groupOf = ({ key, of }: PricedLine): QuoteGroup | null => {
  if (PUT_ON.includes(key)) return null;
  if (key === 'machine' && of === 'bend') return 'bending';
  return GROUP_OF[key] ?? 'work';
};

/**
 * The price before tax shared out over what a customer reads, by what each group costs: whole minor units by the largest
 * remainder, so that they add up to it. A group that is needed but stands open has nothing.
 */
export function customerGroups(lines: readonly PricedLine[], net: number): QuoteOption['groups'] {
  const costs = GROUPS.flatMap((group) => {
    const own = lines.filter((line) => groupOf(line) === group);
    return own.length === 0 ? [] : [{ group, cost: own.reduce((sum, { amount }) => sum + (amount ?? 0), 0) }];
  });
  const cost = costs.reduce((sum, one) => sum + one.cost, 0);
  const shares = costs.map((one) => {
    const exact = cost === 0 ? 0 : net * (one.cost / cost);
    const amount = Math.floor(exact);
    return { group: one.group, amount, rest: exact - amount };
  });
  let left = net - shares.reduce((sum, { amount }) => sum + amount, 0);
  const byRest = shares.toSorted((one, other) => other.rest - one.rest);
  // one unit each to the largest remainders; round again where binary shares fell short by more
  while (left !== 0 && byRest.length > 0) {
    for (const share of byRest) {
      if (left === 0) break;
      share.amount += Math.sign(left);
      left -= Math.sign(left);
    }
  }
  return shares.map(({ group, amount }) => ({ group, amount }));
}
