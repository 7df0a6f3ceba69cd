import type { Rates } from '../../job/rates.ts';
import { input } from '../figure.ts';
import { sumOf, wholeMinor } from './minor-units.ts';
import { percentLine, ruledLine, told, type PricedLine } from './priced-line.ts';

/** What is put on a cost: overhead, margin, rounding, tax; each taken of what came out before it. */
export type PutOn = { readonly lines: readonly PricedLine[]; readonly net: number; readonly tax: number };

/** @param cost all that is bought and done [minor units] */
export function putOn(rates: Rates, cost: number): PutOn {
  const overhead = overheadLines(rates, cost);
  const done = cost + sumOf(overhead);
  const margin = marginLines(rates, done);
  const exact = done + sumOf(margin);
  const rounding = roundingLines(rates, exact);
  const net = exact + sumOf(rounding);
  const tax = taxLines(rates, net);
  return { lines: [...overhead, ...margin, ...rounding, ...tax], net, tax: sumOf(tax) };
}

function overheadLines({ overhead }: Rates, cost: number): PricedLine[] {
  if (overhead.value === 0) return [];
  return [
    percentLine({
      key: 'overhead',
      quantity: cost,
      unit: 'minor',
      reckoning: {
        formula: 'c',
        inputs: () => [input('c', 'bought-and-done', cost, 'minor')],
        sources: ['money'],
      },
      percent: told(overhead, '/rates/overhead'),
    }),
  ];
}

/** A share of the price before it is rounded, so that the cost is what is left of it; or a share of the cost. */
function marginLines({ margin, marginOn }: Rates, cost: number): PricedLine[] {
  if (margin.value === 0) return [];
  const percent = told(margin, '/rates/margin');
  const share = percent.value ?? 0;
  const ofPrice = marginOn === 'price';
  return [
    percentLine({
      key: 'margin',
      quantity: ofPrice ? (100 * cost) / (100 - share) : cost,
      unit: 'minor',
      reckoning: {
        formula: ofPrice ? 'p = c/(1 − m/100)' : 'c',
        inputs: () => [
          input('c', 'cost-with-overhead', cost, 'minor'),
          ...(ofPrice ? [input('m', 'margin', share, 'percent')] : []),
        ],
        sources: ['money', 'typed'],
      },
      percent,
    }),
  ];
}

/** To the nearest step, halves up; a price that is something never becomes nothing: it is one step at the least. */
function roundingLines({ roundTo }: Rates, exact: number): PricedLine[] {
  const rounded = wholeMinor(exact / roundTo);
  if (rounded === null) return [];
  const least = exact > 0 ? 1 : 0;
  const amount = Math.max(least, rounded) * roundTo - exact;
  if (amount === 0) return [];
  return [
    ruledLine({
      key: 'rounding',
      quantity: amount,
      reckoning: {
        formula: exact > 0 ? 'r = k max(1, ⌊p/k + 1/2⌋) − p' : 'r = k ⌊p/k + 1/2⌋ − p',
        inputs: () => [
          input('k', 'price-rounded-to', roundTo, 'minor'),
          input('p', 'price-before-rounding', exact, 'minor'),
        ],
        sources: ['money', 'typed'],
      },
      rateField: '/rates/roundTo',
    }),
  ];
}

function taxLines({ tax }: Rates, net: number): PricedLine[] {
  if (tax.value === 0) return [];
  return [
    percentLine({
      key: 'tax',
      quantity: net,
      unit: 'minor',
      reckoning: {
        formula: 'p',
        inputs: () => [input('p', 'price-before-tax', net, 'minor')],
        sources: ['money'],
      },
      percent: told(tax, '/rates/tax'),
    }),
  ];
}
