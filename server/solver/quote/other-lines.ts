import { input } from '../figure.ts';
import { ratedRule, ruledRule, type LineRule } from './line-rule.ts';
import type { Task } from './order.ts';
import { severalOf } from './parts.ts';
import { told, type Told } from './priced-line.ts';

/** Filler to have at hand, and what grinding and cleaning use up. */
export function usedUpRules({ quantities, job: { rates } }: Task): LineRule[] {
  const gramsOf = (frames: number): number => quantities.filler * frames;
  const finishedOf = (frames: number): number => quantities.counts.finish * frames;
  const filler = ratedRule(
    {
      key: 'filler',
      taken: (frames) => gramsOf(frames) / 1000,
      rate: told(rates.fillerPerKilogram, '/rates/fillerPerKilogram'),
    },
    (frames) => ({
      unit: 'kg',
      reckoning: {
        formula: 'm/1000',
        inputs: () => [input('m', 'filler-of-all-welds', gramsOf(frames), 'g')],
        sources: ['weld-metal', 'practice'],
      },
      parts: severalOf(quantities.parts.filler, frames),
    }),
  );
  const abrasives = ratedRule(
    { key: 'abrasives', taken: finishedOf, rate: told(rates.abrasivesPerWeld, '/rates/abrasivesPerWeld') },
    (frames) => ({
      unit: 'count',
      reckoning: {
        formula: 'n',
        inputs: () => [input('n', 'welds-finished', finishedOf(frames), 'count')],
        sources: ['geometry'],
      },
    }),
  );
  return [...(quantities.filler > 0 ? [filler] : []), ...(quantities.counts.finish > 0 ? [abrasives] : [])];
}

/**
 * What a bender outside takes. His offer is for a frame that he bends from new tube; without one, and where only bends are
 * done again or a piece is bent, it goes by his rates.
 */
export function outsideRules(task: Task): LineRule[] {
  const { quantities, job } = task;
  const { quote } = job;
  if (quote.bending === 'own' || quantities.counts.bend === 0) return [];
  if (quantities.anew === true && quote.bendersOffer !== null) return [offerRule(quote.bendersOffer, quote.date)];
  return [reckonedRule(task)];
}

function reckonedRule({ quantities, job: { rates } }: Task): LineRule {
  const of = (key: 'setUp' | 'perBend' | 'least'): Told => told(rates.outside[key], `/rates/outside/${key}`);
  const setUp = of('setUp');
  const perBend = of('perBend');
  const least = of('least');
  const bendsOf = (frames: number): number => quantities.counts.bend * frames;
  const taken = (frames: number): number | null =>
    least.value === null || setUp.value === null || perBend.value === null
      ? null
      : Math.max(least.value, setUp.value + bendsOf(frames) * perBend.value);
  return ruledRule({ key: 'outside-bending', taken }, (frames) => ({
    reckoning: {
      formula: 'c = max(c₀, s + n p)',
      inputs: () => [
        input('c₀', 'bender-at-least', least.value ?? 0, 'minor'),
        input('s', 'bender-each-order', setUp.value ?? 0, 'minor'),
        input('n', 'count-bend', bendsOf(frames), 'count'),
        input('p', 'bender-each-bend', perBend.value ?? 0, 'minor'),
      ],
      sources: ['typed'],
    },
    rateField: perBend.field,
    since: perBend.own.since,
    needs: [setUp, perBend, least],
  }));
}

const offerRule = (offer: number, since: string): LineRule =>
  ratedRule(
    {
      key: 'outside-bending',
      taken: (frames) => frames,
      rate: { value: offer, field: '/quote/bendersOffer', own: { value: offer, since, example: false } },
    },
    (frames) => ({
      unit: 'count',
      reckoning: { formula: 'n', inputs: () => [input('n', 'frames', frames, 'count')], sources: ['typed'] },
    }),
  );

/** Trips of an order, however many frames it is for. */
export function travelRules({ job: { rates, quote } }: Task): LineRule[] {
  const { trips, kilometres, hours } = quote.travel;
  const asked = [
    { key: 'travel', each: kilometres, unit: 'km', name: 'kilometres-of-a-trip', rate: 'perKilometre' },
    { key: 'travel-time', each: hours, unit: 'h', name: 'hours-of-a-trip', rate: 'hour' },
  ] as const;
  return asked.flatMap(({ key, each, unit, name, rate }) =>
    trips * each === 0
      ? []
      : [
          ratedRule(
            { key, taken: () => trips * each, rate: told(rates.travel[rate], `/rates/travel/${rate}`) },
            () => ({
              unit,
              reckoning: {
                formula: 'n a',
                inputs: () => [input('n', 'trips', trips, 'count'), input('a', name, each, unit)],
                sources: ['typed'],
              },
            }),
          ),
        ],
  );
}
