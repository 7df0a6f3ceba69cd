import type { OwnValue } from '../../job/rates.ts';
import type { Figure, Unit, WorkingInput } from '../../plan/figure.ts';
import type { QuoteLine, QuoteLineKey, QuotePart } from '../../plan/quote.ts';
import { figure } from '../figure.ts';
import type { SourceKey } from '../sources.ts';
import { MOST_AMOUNT, MOST_QUANTITY, wholeMinor } from './minor-units.ts';

/** A line in plain numbers; its figure is made only where somebody reads it. */
export type PricedLine = {
  readonly key: QuoteLineKey;
  readonly of: string;
  readonly size: QuoteLine['size'];
  readonly quantity: number | null;
  readonly unit: Unit;
  readonly rate: number | null;
  readonly rateUnit: QuoteLine['rateUnit'];
  readonly rateField: string;
  readonly missing: readonly string[];
  readonly example: boolean;
  readonly since: string;
  /** Before it is rounded [minor]. */
  readonly exact: number | null;
  readonly amount: number | null;
  readonly parts: readonly QuotePart[];
  readonly figure: () => Figure | null;
};

/** A value of the shop's own with the field that it is typed in. */
export type Told = { readonly value: number | null; readonly field: string; readonly own: OwnValue };

export const told = (own: OwnValue, field: string): Told => ({ value: own.value, field: `${field}/value`, own });

/** How a quantity came about. */
export type Reckoning = {
  readonly formula: string;
  readonly inputs: () => readonly WorkingInput[];
  readonly sources: readonly [SourceKey, ...SourceKey[]];
};

type Asked = {
  readonly key: QuoteLineKey;
  readonly of?: string;
  readonly size?: QuoteLine['size'];
  /** null while something that it needs is open; `unit` its unit. */
  readonly quantity: number | null;
  readonly unit: Unit;
  readonly reckoning: Reckoning;
  /** What the quantity hangs on beside the work itself: times, waste. */
  readonly needs?: readonly Told[];
  /** Fields that are missing beside those. */
  readonly missing?: readonly string[];
  readonly parts?: readonly QuotePart[];
};

export type RatedAsked = Asked & { readonly rate: Told };
export type RuledAsked = Omit<Asked, 'unit'> & { readonly rateField: string; readonly since?: string };

/** What so much of something comes to [minor], not rounded; null while it is open, or more than can be counted. */
export function exactOf(quantity: number | null, price: number | null): number | null {
  if (quantity === null || price === null || !(Math.abs(quantity) <= MOST_QUANTITY)) return null;
  const exact = quantity * price;
  return Math.abs(exact) <= MOST_AMOUNT ? exact : null;
}

/** A line of so many units at a rate: open while the rate or the quantity is. */
export const ratedLine = (asked: RatedAsked): PricedLine => {
  const { rate } = asked;
  return lineOf(asked, {
    needs: [rate, ...(asked.needs ?? [])],
    rate: rate.value,
    rateUnit: 'minor',
    rateField: rate.field,
    since: rate.own.since,
    factor: 1,
  });
};

/** A percentage of an amount; its quantity is what it is taken of [minor units]. */
export const percentLine = (asked: Asked & { readonly percent: Told }): PricedLine =>
  lineOf(asked, {
    needs: [asked.percent, ...(asked.needs ?? [])],
    rate: asked.percent.value,
    rateUnit: 'percent',
    rateField: asked.percent.field,
    since: asked.percent.own.since,
    factor: 100,
  });

/** A line whose quantity is the amount itself, reckoned by a rule of its own; it has no rate. */
export const ruledLine = (asked: RuledAsked): PricedLine =>
  lineOf(
    { ...asked, unit: 'minor' },
    {
      needs: asked.needs ?? [],
      rate: null,
      rateUnit: 'minor',
      rateField: asked.rateField,
      since: asked.since ?? '',
      factor: null,
    },
  );

function lineOf(
  { key, of = '', size = null, quantity: asked, unit, reckoning, missing = [], parts = [] }: Asked,
  by: Pick<PricedLine, 'rate' | 'rateUnit' | 'rateField' | 'since'> & {
    readonly needs: readonly Told[];
    /** The rate is for so many of the quantity; null: there is none, the quantity is the amount. */
    readonly factor: number | null;
  },
): PricedLine {
  const { needs, factor, rate, rateUnit, rateField, since } = by;
  const quantity = asked === null || !(Math.abs(asked) <= MOST_QUANTITY) ? null : asked;
  const exact = exactOf(quantity, factor === null ? 1 : rate === null ? null : rate / factor);
  return {
    key,
    of,
    size,
    quantity,
    unit,
    rate,
    rateUnit,
    rateField,
    missing: [...new Set([...needs.flatMap(({ value, field }) => (value === null ? [field] : [])), ...missing])],
    example: needs.some(({ value, own }) => value !== null && own.example),
    since,
    exact,
    amount: exact === null ? null : wholeMinor(exact),
    parts: quantity === null ? [] : parts,
    figure: () =>
      quantity === null ? null : figure(quantity, unit, reckoning.formula, reckoning.inputs(), reckoning.sources),
  };
}
