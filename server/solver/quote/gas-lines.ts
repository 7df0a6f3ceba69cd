import { HOURS_A_DAY } from '../correction/days-out.ts';
import { input } from '../figure.ts';
import { usableGas } from '../purge/bottle-plan.ts';
import { MOST_QUANTITY } from './minor-units.ts';
import type { Order } from './order.ts';
import { ratedLine, told, type PricedLine } from './priced-line.ts';
import { severalOf } from './parts.ts';

/** Gas of an order [L], what a full bottle gives of it, and the bottles that are begun; null where one gives nothing. */
export type GasNeed = { readonly litres: number; readonly usable: number; readonly bottles: number | null };

/** Where it stands that nothing can be taken from a bottle. */
export const BOTTLE_FIELD = '/purge/bottle/gaugePressure';

/** Gas of all frames together: every bottle is taken to be filled like the one that the job has. */
export function gasNeed({ quantities: { purgeGas, torchGas }, job, quantity }: Order): GasNeed {
  const litres = (purgeGas + torchGas) * quantity;
  const usable = usableGas(job.purge.bottle);
  const bottles = litres > 0 ? Math.ceil(litres / usable) : 0;
  return { litres, usable, bottles: bottles <= MOST_QUANTITY ? bottles : null };
}

/** Gas as it is charged: what is used, or every bottle that is begun, whole. */
export function gasLines(order: Order, { litres, usable, bottles }: GasNeed): PricedLine[] {
  if (litres === 0) return [];
  const { quantities, job, quantity } = order;
  const { gas } = job.rates;
  const used = input('V', 'purge-and-torch-gas', litres, 'L');
  const common = { key: 'gas', parts: severalOf(quantities.parts.gas, quantity) } as const;
  if (gas.by === 'used') {
    return [
      ratedLine({
        ...common,
        quantity: litres / 1000,
        unit: 'm3',
        reckoning: { formula: 'V/1000', inputs: () => [used], sources: ['gas-network', 'geometry'] },
        rate: told(gas.perCubicMetre, '/rates/gas/perCubicMetre'),
      }),
    ];
  }
  return [
    ratedLine({
      ...common,
      quantity: bottles,
      unit: 'count',
      reckoning: {
        formula: 'n = ⌈V/V_u⌉',
        inputs: () => [used, input('V_u', 'usable-gas', usable, 'L')],
        sources: ['argon-state', 'practice'],
      },
      rate: told(gas.perBottle, '/rates/gas/perBottle'),
      missing: bottles === null ? [BOTTLE_FIELD] : [],
    }),
  ];
}

/**
 * Rent of the bottle that gas is taken from, one at a time, for the days of labour that are begun.
 *
 * @param labour minutes of all labour, null while one is open, and the fields that are missing for it
 */
export function rentLines(
  { job: { rates } }: Order,
  { litres }: GasNeed,
  labour: { readonly minutes: number | null; readonly missing: readonly string[] },
): PricedLine[] {
  const { rentPerDay } = rates.gas;
  if (litres === 0 || rentPerDay === null) return [];
  const { minutes, missing } = labour;
  return [
    ratedLine({
      key: 'bottle-rent',
      quantity: minutes === null ? null : Math.max(1, Math.ceil(minutes / 60 / HOURS_A_DAY)),
      unit: 'd',
      reckoning: {
        formula: 'd = ⌈t/(60 h)⌉, at least 1',
        inputs: () => [input('t', 'minutes', minutes ?? 0, 'min'), input('h', 'hours-a-day', HOURS_A_DAY, 'h')],
        sources: ['practice'],
      },
      rate: told(rentPerDay, '/rates/gas/rentPerDay'),
      missing,
    }),
  ];
}
