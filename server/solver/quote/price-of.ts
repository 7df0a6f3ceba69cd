import type { QuoteBreak } from '../../plan/quote.ts';
import { exactAt, type LineRule } from './line-rule.ts';
import { gasRules, gasTask, rentRules } from './gas-lines.ts';
import { labourOf, type Labour } from './labour-lines.ts';
import { sumOf, wholeMinor } from './minor-units.ts';
import type { Order, Task } from './order.ts';
import { outsideRules, travelRules, usedUpRules } from './other-lines.ts';
import { putOn } from './percent-lines.ts';
import type { PricedLine } from './priced-line.ts';
import { tubeLines } from './tube-lines.ts';

/** What a piece of work is bought and done for beside its tube, in the order of a quote; tube stands before it. */
export type Rules = { readonly rules: readonly LineRule[]; readonly labour: Labour };

/** The one core that every price is made with: a rule for each line, for any number of frames. */
export function rulesFor(task: Task): Rules {
  const gas = gasTask(task);
  const labour = labourOf(task, gas);
  return {
    labour,
    rules: [
      ...gasRules(task, gas),
      ...rentRules(task, labour),
      ...usedUpRules(task),
      ...labour.rules,
      ...outsideRules(task),
      ...travelRules(task),
    ],
  };
}

/** A sum of lines, put on them what belongs there: `cost` is what is bought and done, `net` the price before tax. */
type Sums = { readonly cost: number; readonly net: number; readonly tax: number; readonly total: number };

/**
 * An order priced: every sum is of the lines that have an amount, in whole minor units. Labour in minutes of all frames,
 * null while a time is open.
 */
export type PricedLines = Sums & {
  readonly quantity: number;
  readonly lines: readonly PricedLine[];
  readonly minutes: number | null;
};

/**
 * The price of so many frames: what is needed at the rates of the job, line by line in the order of a quote. Each line is
 * rounded by itself and the sums are theirs. A line whose rate, time or length nobody knows stands open and is in no sum.
 */
export function priceOf(order: Order, { rules, labour }: Rules = rulesFor(order)): PricedLines {
  const { job, quantity } = order;
  const bought = [...tubeLines(order), ...rules.map((rule) => rule.line(quantity)).filter((line) => line !== null)];
  const cost = sumOf(bought);
  const { lines, net, tax } = putOn(job.rates, cost);
  return {
    quantity,
    lines: [...bought, ...lines],
    cost,
    net,
    tax,
    total: net + tax,
    minutes: labour.minutes(quantity),
  };
}

/** The same in amounts alone, for those who read nothing else. */
export type PricedAmounts = Sums & { readonly quantity: number; readonly lines: QuoteBreak['lines'] };

/** What `priceOf` comes to, without how its lines came about; a property test holds it to that. */
export function amountsOf(order: Order, { rules }: Rules = rulesFor(order)): PricedAmounts {
  const { job, quantity } = order;
  const lines: QuoteBreak['lines'] = tubeLines(order).map(({ key, of, amount }) => ({ key, of, amount }));
  for (const rule of rules) {
    const exact = exactAt(rule, quantity);
    if (exact !== undefined)
      lines.push({ key: rule.key, of: rule.of, amount: exact === null ? null : wholeMinor(exact) });
  }
  const cost = sumOf(lines);
  const on = putOn(job.rates, cost);
  for (const { key, of, amount } of on.lines) lines.push({ key, of, amount });
  return { quantity, lines, cost, net: on.net, tax: on.tax, total: on.net + on.tax };
}

/**
 * What is bought and done for so many frames before any line is rounded, so that a cost that grows never falls back by a
 * rounding; null while a line stands open.
 *
 * @param tube what the tube comes to for as many, likewise
 */
export function exactCost({ rules }: Rules, frames: number, tube: number | null): number | null {
  let sum = tube;
  for (const rule of rules) {
    if (sum === null) return null;
    const exact = exactAt(rule, frames);
    if (exact !== undefined) sum = exact === null ? null : sum + exact;
  }
  return sum;
}

/** What the tube of an order comes to, not rounded; null while a line of it stands open. */
export const exactTube = (order: Order): number | null =>
  tubeLines(order).reduce<number | null>((sum, { exact }) => (sum === null || exact === null ? null : sum + exact), 0);
