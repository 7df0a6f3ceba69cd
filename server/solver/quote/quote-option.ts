import type { SettledJob } from '../../job/job.ts';
import type { StockLayout } from '../../job/stock.ts';
import type { Way } from '../../plan/correction.ts';
import type { Figure } from '../../plan/figure.ts';
import type { QuoteBreak, QuoteLineKey, QuoteOption } from '../../plan/quote.ts';
import { figure, input } from '../figure.ts';
import { numbered, termsOf } from '../numbered-symbols.ts';
import { customerGroups } from './customer-groups.ts';
import { lineOf } from './line-of.ts';
import { wholeMinor } from './minor-units.ts';
import { amountsOf, priceOf, rulesFor, type PricedAmounts, type Rules } from './price-of.ts';
import type { Quantities } from './quantities.ts';
import { OPERATIONS } from './operations.ts';

/**
 * One way, or the frame, priced for every quantity that is asked for; lines with their workings for the first.
 *
 * @param layout bars that the tube of the first quantity is priced by; null: none
 */
export function quoteOption(
  { scope, quantities }: { readonly scope: QuoteOption['scope']; readonly quantities: Quantities },
  job: SettledJob,
  layout: StockLayout | null = null,
): Omit<QuoteOption, 'offered'> {
  const rules = rulesFor({ quantities, job });
  const [quantity = 1, ...more] = job.quote.quantities;
  const first = priceOf({ quantities, job, quantity, layout }, rules);
  const others = more.map((several) => amountsOf({ quantities, job, quantity: several }, rules));
  const { lines, cost, net, tax, total } = first;
  return {
    scope,
    lines: lines.map(lineOf),
    open: lines.flatMap(({ amount }, place) => (amount === null ? [place] : [])),
    examples: lines.filter(({ example }) => example).length,
    cost,
    net,
    tax,
    total,
    groups: customerGroups(lines, net),
    breaks: [first, ...others].map(breakOf),
    minutes: minutesOf(rules, quantity),
  };
}

type Sums = Pick<PricedAmounts, 'quantity' | 'net' | 'tax' | 'total'> & {
  readonly lines: readonly QuoteBreak['lines'][number][];
};

function breakOf({ quantity, lines, net, tax, total }: Sums): QuoteBreak {
  return {
    quantity,
    lines: lines.map(({ key, of, amount }) => ({ key, of, amount })),
    open: lines.filter(({ amount }) => amount === null).length,
    net,
    tax,
    total,
    netEach: eachOf(net, quantity),
    totalEach: eachOf(total, quantity),
  };
}

/** Of one frame; a sum is never too large to be divided. */
const eachOf = (sum: number, quantity: number): number => wholeMinor(sum / quantity) ?? Math.round(sum / quantity);

const LABOUR: readonly QuoteLineKey[] = OPERATIONS;

/** Labour of one frame, the set-ups shared by all of the order. */
export function minutesOf({ rules, labour }: Rules, quantity: number): Figure | null {
  const minutes = labour.minutes(quantity);
  if (minutes === null) return null;
  const hours = rules.flatMap(({ key, taken }) => {
    const value = LABOUR.includes(key) ? taken(quantity) : null;
    return typeof value === 'number' ? [{ key, value }] : [];
  });
  const sum = termsOf('h', hours.length, ' + ');
  return figure(
    minutes / quantity,
    'min',
    quantity === 1 ? `t = 60 (${sum})` : `t = 60 (${sum})/n`,
    [
      ...hours.map(({ key, value }, index) => input(numbered('h', index + 1), `time-of-${key}`, value, 'h')),
      ...(quantity === 1 ? [] : [input('n', 'frames', quantity, 'count')]),
    ],
    ['typed', 'geometry'],
  );
}

/** Cost of one frame with tax, and what it is at least where lines stand open. */
export function costsOf({
  lines,
  total,
  quantity,
}: Pick<PricedAmounts, 'total' | 'quantity'> & {
  readonly lines: readonly { readonly amount: number | null }[];
}): Pick<Way, 'cost' | 'costAtLeast'> {
  const known = lines.filter(({ amount }) => amount !== null).length;
  const sum = figure(
    eachOf(total, quantity),
    'minor',
    quantity === 1 ? 'S' : 'c = S/n',
    [
      input('S', 'sum-of-the-lines', total, 'minor'),
      input('k', 'quote-lines', known, 'count'),
      ...(quantity === 1 ? [] : [input('n', 'frames', quantity, 'count')]),
    ],
    ['money'],
  );
  return { cost: known < lines.length ? null : sum, costAtLeast: sum };
}
