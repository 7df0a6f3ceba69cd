import type { OwnValue, TubeRate } from '../../job/rates.ts';
import type { QuotePart } from '../../plan/quote.ts';
import { input } from '../figure.ts';
import { worthOf } from '../stock/bar-credit.ts';
import { tubeNeeds, type TubeNeed } from '../stock/tube-needs.ts';
import type { Order } from './order.ts';
import { percentLine, ratedLine, ruledLine, told, type PricedLine } from './priced-line.ts';
import { sizeKey, sizeOf } from './size-key.ts';

/**
 * Tube of each size and grade: by the bars of the layout where the order has one, else by the metre or by the bar, with what
 * the offcuts that are kept are worth.
 */
export function tubeLines({
  quantities: { pieces },
  job: { rates, stock },
  quantity,
  layout = null,
}: Order): PricedLine[] {
  const lines = tubeNeeds({ pieces, quantity, rates, saw: stock.saw, layout }).flatMap((need) => {
    const { rate, kept } = need;
    const parts = partsOf(need, quantity);
    if (kept !== null) return [keptLine(need, kept, { remnantCredit: rates.remnantCredit, parts })];
    if (rate?.by === 'metre') return [byMetre(need, rate, { waste: rates.waste, parts })];
    return rate === null ? [openLine(need)] : byBar(need, rate, { remnantCredit: rates.remnantCredit, parts });
  });
  const isTube = ({ key }: PricedLine): boolean => key === 'tube';
  return [...lines.filter(isTube), ...lines.filter((line) => !isTube(line))];
}

const partsOf = ({ pieces }: TubeNeed, quantity: number): QuotePart[] =>
  pieces.map(({ name, length, count }) => ({
    key: 'piece',
    name,
    value: (quantity * length * count) / 1000,
    unit: 'm',
  }));

type Parts = readonly QuotePart[];

/** What a line hangs on whose tube is priced by the bars that were laid out. */
export const LAYOUT_FIELD = '/stock/layout';

function byMetre(
  need: TubeNeed,
  { perMetre }: TubeRate,
  { waste, parts }: { readonly waste: OwnValue; readonly parts: Parts },
): PricedLine {
  const lost = told(waste, '/rates/waste');
  const share = lost.value;
  return ratedLine({
    key: 'tube',
    of: sizeKey(need),
    size: sizeOf(need),
    quantity: share === null ? null : need.metres * (1 + share / 100),
    unit: 'm',
    reckoning: {
      formula: 'L = ℓ (1 + w/100)',
      inputs: () => [
        input('ℓ', 'sawn-off-bars', need.metres, 'm'),
        ...(share === null ? [] : [input('w', 'waste', share, 'percent')]),
      ],
      sources: ['geometry', 'typed'],
    },
    rate: told(perMetre, `${need.field}/perMetre`),
    needs: [lost],
    parts,
  });
}

function byBar(
  need: TubeNeed,
  { perBar, barLength }: TubeRate,
  { remnantCredit, parts }: { readonly remnantCredit: OwnValue; readonly parts: Parts },
): PricedLine[] {
  const { bars } = need;
  const price = told(perBar, `${need.field}/perBar`);
  const named = { of: sizeKey(need), size: sizeOf(need) };
  const line = ratedLine({
    key: 'tube',
    ...named,
    quantity: bars?.count ?? null,
    unit: 'count',
    reckoning: {
      formula: 'n',
      inputs: () => [
        input('n', 'bars-begun', bars?.count ?? 0, 'count'),
        input('ℓ', 'length-of-a-bar', barLength, 'mm'),
        input('s', 'sawn-off-bars', need.metres, 'm'),
      ],
      sources: ['first-fit', 'bar-bookkeeping'],
    },
    rate: price,
    missing: bars === null ? [`${need.field}/barLength`] : [],
    parts,
  });
  const credit = told(remnantCredit, '/rates/remnantCredit');
  if (bars === null || bars.keptLength === 0 || credit.value === 0) return [line];
  const { keptLength } = bars;
  const worth = price.value === null ? null : worthOf({ price: price.value, length: barLength }, keptLength);
  return [
    line,
    percentLine({
      key: 'remnant-credit',
      ...named,
      quantity: worth,
      unit: 'minor',
      reckoning: {
        formula: 'c = k p/ℓ',
        inputs: () => [
          input('k', 'offcuts-kept', keptLength / 1000, 'm'),
          input('p', 'price-of-a-bar', price.value ?? 0, 'minor'),
          input('ℓ', 'length-of-a-bar', barLength / 1000, 'm'),
        ],
        sources: ['typed', 'bar-bookkeeping'],
      },
      percent: { ...credit, value: credit.value === null ? null : -credit.value },
      needs: [price],
    }),
  ];
}

/** The share of bars that were laid out and kept, offcuts credited; it hangs on today's price of those that are bought. */
function keptLine(
  need: TubeNeed,
  kept: NonNullable<TubeNeed['kept']>,
  { remnantCredit, parts }: { readonly remnantCredit: OwnValue; readonly parts: Parts },
): PricedLine {
  const { amount, bars, isRated, by, isCredited, unpriced, isForeign } = kept;
  const { rate, field } = need;
  const credit = told(remnantCredit, '/rates/remnantCredit');
  return ruledLine({
    key: 'tube',
    of: sizeKey(need),
    size: sizeOf(need),
    quantity: amount,
    reckoning: {
      formula: 'c = Σ pᵢ ℓᵢ/Σℓ − offcuts kept',
      inputs: () => [input('n', 'bars-laid-out', bars, 'count'), input('ℓ', 'sawn-off-bars', need.metres, 'm')],
      sources: ['bar-bookkeeping', 'typed'],
    },
    rateField: LAYOUT_FIELD,
    needs: [
      ...(rate === null || by === null ? [] : [told(rate[by], `${field}/${by}`)]),
      // a credit that nothing is credited by is no example that the price rests on
      ...(isCredited && credit.value !== 0 ? [credit] : []),
    ],
    missing: [
      ...(isRated && rate === null ? [field] : []),
      ...(unpriced.length > 0 || isForeign ? [LAYOUT_FIELD] : []),
    ],
    parts,
  });
}

/** No price of this size is known. */
const openLine = (need: TubeNeed): PricedLine =>
  ruledLine({
    key: 'tube',
    of: sizeKey(need),
    size: sizeOf(need),
    quantity: null,
    reckoning: { formula: 'c', inputs: () => [], sources: ['typed'] },
    rateField: need.field,
    missing: [need.field],
  });
