import type { Quote } from '../../job/quote.ts';
import { input } from '../figure.ts';
import type { Order } from './order.ts';
import { severalOf } from './parts.ts';
import { ratedLine, ruledLine, told, type PricedLine, type Told } from './priced-line.ts';

/** Filler to have at hand, and what grinding and cleaning use up. */
export function usedUpLines({ quantities, job: { rates }, quantity }: Order): PricedLine[] {
  const grams = quantities.filler * quantity;
  const finished = quantities.counts.finish * quantity;
  const filler = ratedLine({
    key: 'filler',
    quantity: grams / 1000,
    unit: 'kg',
    reckoning: {
      formula: 'm/1000',
      inputs: () => [input('m', 'filler-of-all-welds', grams, 'g')],
      sources: ['weld-metal', 'practice'],
    },
    rate: told(rates.fillerPerKilogram, '/rates/fillerPerKilogram'),
    parts: severalOf(quantities.parts.filler, quantity),
  });
  const abrasives = ratedLine({
    key: 'abrasives',
    quantity: finished,
    unit: 'count',
    reckoning: {
      formula: 'n',
      inputs: () => [input('n', 'welds-finished', finished, 'count')],
      sources: ['geometry'],
    },
    rate: told(rates.abrasivesPerWeld, '/rates/abrasivesPerWeld'),
  });
  return [...(grams > 0 ? [filler] : []), ...(finished > 0 ? [abrasives] : [])];
}

/**
 * What a bender outside takes. His offer is for a frame that he bends from new tube; without one, and where only bends are
 * done again or a piece is bent, it goes by his rates.
 */
export function outsideLines({ quantities, job: { rates, quote }, quantity }: Order): PricedLine[] {
  const bends = quantities.counts.bend * quantity;
  if (quote.bending === 'own' || bends === 0) return [];
  if (quantities.anew === true && quote.bendersOffer !== null)
    return [offerLine(quote.bendersOffer, quantity, quote.date)];
  const of = (key: 'setUp' | 'perBend' | 'least'): Told => told(rates.outside[key], `/rates/outside/${key}`);
  const setUp = of('setUp');
  const perBend = of('perBend');
  const least = of('least');
  const known = setUp.value !== null && perBend.value !== null && least.value !== null;
  return [
    ruledLine({
      key: 'outside-bending',
      quantity: known ? Math.max(least.value ?? 0, (setUp.value ?? 0) + bends * (perBend.value ?? 0)) : null,
      reckoning: {
        formula: 'c = max(c₀, s + n p)',
        inputs: () => [
          input('c₀', 'bender-at-least', least.value ?? 0, 'minor'),
          input('s', 'bender-each-order', setUp.value ?? 0, 'minor'),
          input('n', 'count-bend', bends, 'count'),
          input('p', 'bender-each-bend', perBend.value ?? 0, 'minor'),
        ],
        sources: ['typed'],
      },
      rateField: perBend.field,
      since: perBend.own.since,
      needs: [setUp, perBend, least],
    }),
  ];
}

const offerLine = (offer: NonNullable<Quote['bendersOffer']>, quantity: number, since: string): PricedLine =>
  ratedLine({
    key: 'outside-bending',
    quantity,
    unit: 'count',
    reckoning: {
      formula: 'n',
      inputs: () => [input('n', 'frames', quantity, 'count')],
      sources: ['typed'],
    },
    rate: { value: offer, field: '/quote/bendersOffer', own: { value: offer, since, example: false } },
  });

/** Trips of an order, however many frames it is for. */
export function travelLines({ job: { rates, quote } }: Order): PricedLine[] {
  const { trips, kilometres, hours } = quote.travel;
  const asked = [
    { key: 'travel', each: kilometres, unit: 'km', name: 'kilometres-of-a-trip', rate: 'perKilometre' },
    { key: 'travel-time', each: hours, unit: 'h', name: 'hours-of-a-trip', rate: 'hour' },
  ] as const;
  return asked.flatMap(({ key, each, unit, name, rate }) =>
    trips * each === 0
      ? []
      : [
          ratedLine({
            key,
            quantity: trips * each,
            unit,
            reckoning: {
              formula: 'n a',
              inputs: () => [input('n', 'trips', trips, 'count'), input('a', name, each, unit)],
              sources: ['typed'],
            },
            rate: told(rates.travel[rate], `/rates/travel/${rate}`),
          }),
        ],
  );
}
