import { gasLines, gasNeed, rentLines } from './gas-lines.ts';
import { labourLines } from './labour-lines.ts';
import { sumOf } from './minor-units.ts';
import type { Order } from './order.ts';
import { outsideLines, travelLines, usedUpLines } from './other-lines.ts';
import { putOn } from './percent-lines.ts';
import type { PricedLine } from './priced-line.ts';
import { tubeLines } from './tube-lines.ts';

/**
 * An order priced: every sum is of the lines that have an amount, in whole minor units. `cost` is what is bought and done,
 * `net` the price before tax. Labour in minutes of all frames, null while a time is open.
 */
export type PricedLines = {
  readonly quantity: number;
  readonly lines: readonly PricedLine[];
  readonly cost: number;
  readonly net: number;
  readonly tax: number;
  readonly total: number;
  readonly minutes: number | null;
};

/**
 * The price of so many frames: what is needed at the rates of the job, line by line in the order of a quote. Each line is
 * rounded by itself and the sums are theirs. A line whose rate, time or length nobody knows stands open and is in no sum.
 */
export function priceOf(order: Order): PricedLines {
  const { job, quantity } = order;
  const gas = gasNeed(order);
  const labour = labourLines(order, gas);
  const bought = [
    ...tubeLines(order),
    ...gasLines(order, gas),
    ...rentLines(order, gas, labour),
    ...usedUpLines(order),
    ...labour.lines,
    ...outsideLines(order),
    ...travelLines(order),
  ];
  const cost = sumOf(bought);
  const { lines, net, tax } = putOn(job.rates, cost);
  return { quantity, lines: [...bought, ...lines], cost, net, tax, total: net + tax, minutes: labour.minutes };
}
