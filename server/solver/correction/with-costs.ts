import type { CorrectionPlan, Way } from '../../plan/correction.ts';
import type { QuoteOption } from '../../plan/quote.ts';
import { costsOf } from '../quote/quote-option.ts';
import { markUnbeaten } from './compare-ways.ts';
import { costBesideOthers } from './cost-beside-others.ts';
import { daysOut, type Bender } from './days-out.ts';
import { priceRisksOf } from './way-risks.ts';
import { whatWouldChange } from './what-would-change.ts';

/** What the ways are compared by beside their prices. */
type Setting = {
  readonly bender: Bender;
  /** What the frame may miss by, ± [mm]. */
  readonly tolerance: number;
};

/**
 * A correction with the prices of the quote in its ways: cost and labour of one frame of the first quantity, its legs among
 * them, days by that labour, what can go wrong with the price, and what these change. What is recommended stays: legs are
 * alike in every way. A way that is no option keeps what it had.
 *
 * @param options of the quote; `scope` tells whose they are
 */
export function withCosts(
  correction: CorrectionPlan,
  options: readonly QuoteOption[],
  { bender, tolerance }: Setting,
): CorrectionPlan {
  const ways = markUnbeaten(
    correction.ways.map((way): Way => {
      const option = options.find(({ scope }) => scope === way.key);
      return option === undefined ? way : pricedBy(way, option, bender);
    }),
  );
  const { recommended } = correction;
  return {
    ...correction,
    ways,
    money: costBesideOthers(ways, recommended),
    wouldChange: whatWouldChange(ways, recommended, tolerance),
  };
}

function pricedBy(way: Way, option: QuoteOption, bender: Bender): Way {
  const { lines, total, breaks, minutes } = option;
  return {
    ...way,
    ...costsOf({ lines, total, quantity: breaks[0]?.quantity ?? 1 }),
    minutes,
    days: daysOut(way, { minutes, ...bender }),
    risks: [...way.risks, ...priceRisksOf(option)],
  };
}
