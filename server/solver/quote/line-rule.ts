import type { QuoteLineKey } from '../../plan/quote.ts';
import {
  exactOf,
  ratedLine,
  ruledLine,
  type PricedLine,
  type RatedAsked,
  type RuledAsked,
  type Told,
} from './priced-line.ts';

/** What a line takes, in its unit: null while something of it is open; undefined: there is no such line. */
export type Taken = number | null | undefined;

/**
 * One line of a price as it hangs on the number of frames: plain numbers, made once for each piece of work and asked for as
 * many numbers of frames as somebody wants to look at. `line` makes the whole of it, for those who read it.
 */
export type LineRule = {
  readonly key: QuoteLineKey;
  readonly of: string;
  readonly taken: (frames: number) => Taken;
  /** Minor units for one of it; null: open. */
  readonly price: number | null;
  readonly line: (frames: number) => PricedLine | null;
};

type Name = { readonly key: QuoteLineKey; readonly of?: string; readonly taken: (frames: number) => Taken };

/** So much of something at a rate. */
export function ratedRule(
  { key, of = '', taken, rate }: Name & { readonly rate: Told },
  more: (frames: number) => Omit<RatedAsked, 'key' | 'of' | 'quantity' | 'rate'>,
): LineRule {
  return {
    key,
    of,
    taken,
    price: rate.value,
    line: (frames) => {
      const quantity = taken(frames);
      return quantity === undefined ? null : ratedLine({ key, of, quantity, rate, ...more(frames) });
    },
  };
}

/** An amount by a rule of its own. */
export function ruledRule(
  { key, of = '', taken }: Name,
  more: (frames: number) => Omit<RuledAsked, 'key' | 'of' | 'quantity'>,
): LineRule {
  return {
    key,
    of,
    taken,
    price: 1,
    line: (frames) => {
      const quantity = taken(frames);
      return quantity === undefined ? null : ruledLine({ key, of, quantity, ...more(frames) });
    },
  };
}

/** What a rule comes to for so many frames, not rounded [minor]; null: open, undefined: there is no such line. */
export function exactAt({ taken, price }: LineRule, frames: number): Taken {
  const quantity = taken(frames);
  return quantity === undefined ? undefined : exactOf(quantity, price);
}
