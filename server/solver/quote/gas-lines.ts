import { HOURS_A_DAY } from '../correction/days-out.ts';
import { input } from '../figure.ts';
import { usableGas } from '../purge/bottle-plan.ts';
import type { Labour } from './labour-lines.ts';
import { ratedRule, type LineRule } from './line-rule.ts';
import { MOST_QUANTITY } from './minor-units.ts';
import type { Task } from './order.ts';
import { severalOf } from './parts.ts';
import { told } from './priced-line.ts';

/** Gas of one frame, and what a full bottle gives of it [L]. */
export type GasTask = { readonly litres: number; readonly usable: number };

/** Gas of an order [L], what a full bottle gives of it, and the bottles that are begun; null where one gives nothing. */
export type GasNeed = { readonly litres: number; readonly usable: number; readonly bottles: number | null };

/** Where it stands that nothing can be taken from a bottle. */
export const BOTTLE_FIELD = '/purge/bottle/gaugePressure';

/** Every bottle is taken to be filled like the one that the job has. */
export const gasTask = ({ quantities: { purgeGas, torchGas }, job }: Task): GasTask => ({
  litres: purgeGas + torchGas,
  usable: usableGas(job.purge.bottle),
});

/** Bottles that so many frames begin; null where one gives nothing. */
export function bottlesFor({ litres, usable }: GasTask, frames: number): number | null {
  const bottles = litres > 0 ? Math.ceil((litres * frames) / usable) : 0;
  return bottles <= MOST_QUANTITY ? bottles : null;
}

/** Gas of all frames together. */
export function gasNeed(task: Task, frames: number): GasNeed {
  const gas = gasTask(task);
  return { litres: gas.litres * frames, usable: gas.usable, bottles: bottlesFor(gas, frames) };
}

/** Gas as it is charged: what is used with a share of what is left in the last bottle, or every bottle that is begun, whole. */
export function gasRules(task: Task, gas: GasTask): LineRule[] {
  if (gas.litres === 0) return [];
  return [task.job.rates.gas.by === 'used' ? usedRule(task, gas) : bottlesRule(task, gas)];
}

function usedRule({ quantities, job }: Task, gas: GasTask): LineRule {
  const { perCubicMetre, restOfBottle } = job.rates.gas;
  const share = told(restOfBottle, '/rates/gas/restOfBottle');
  const charged = share.value === 0 ? 0 : share.value;
  /** What is charged of the last bottle beside what is used of it [L]; null while that cannot be told. */
  const restOf = (frames: number): number | null => {
    if (charged === 0) return 0;
    const bottles = bottlesFor(gas, frames);
    return charged === null || bottles === null ? null : (charged / 100) * restLitres(gas, frames, bottles);
  };
  const taken = (frames: number): number | null => {
    const rest = restOf(frames);
    return rest === null ? null : (gas.litres * frames + rest) / 1000;
  };
  return ratedRule({ key: 'gas', taken, rate: told(perCubicMetre, '/rates/gas/perCubicMetre') }, (frames) => {
    const litres = gas.litres * frames;
    const used = input('V', 'purge-and-torch-gas', litres, 'L');
    const parts = severalOf(quantities.parts.gas, frames);
    if (charged === 0)
      return {
        unit: 'm3',
        reckoning: { formula: 'V/1000', inputs: () => [used], sources: ['gas-network', 'geometry'] },
        parts,
      };
    const bottles = bottlesFor(gas, frames);
    const rest = restOf(frames) ?? 0;
    return {
      unit: 'm3',
      reckoning: {
        formula: '(V + r (n V_u − V)/100)/1000',
        inputs: () => [
          used,
          input('r', 'rest-of-a-bottle-charged', charged ?? 0, 'percent'),
          input('n', 'bottles-begun', bottles ?? 0, 'count'),
          input('V_u', 'usable-gas', gas.usable, 'L'),
        ],
        sources: ['gas-network', 'argon-state', 'typed'],
      },
      needs: [share],
      missing: bottles === null ? [BOTTLE_FIELD] : [],
      parts: rest > 0 ? [...parts, { key: 'rest-of-bottle', name: '', value: rest, unit: 'L' }] : parts,
    };
  });
}

/** What is left of the usable gas in the last bottle that is begun [L]. */
const restLitres = ({ litres, usable }: GasTask, frames: number, bottles: number): number =>
  Math.max(0, bottles * usable - litres * frames);

function bottlesRule({ quantities, job }: Task, gas: GasTask): LineRule {
  const taken = (frames: number): number | null => bottlesFor(gas, frames);
  return ratedRule({ key: 'gas', taken, rate: told(job.rates.gas.perBottle, '/rates/gas/perBottle') }, (frames) => ({
    unit: 'count',
    reckoning: {
      formula: 'n = ⌈V/V_u⌉',
      inputs: () => [
        input('V', 'purge-and-torch-gas', gas.litres * frames, 'L'),
        input('V_u', 'usable-gas', gas.usable, 'L'),
      ],
      sources: ['argon-state', 'practice'],
    },
    missing: taken(frames) === null ? [BOTTLE_FIELD] : [],
    parts: severalOf(quantities.parts.gas, frames),
  }));
}

/** Rent of the bottle that gas is taken from, one at a time, for the days of labour that are begun. */
export function rentRules({ quantities, job: { rates } }: Task, labour: Labour): LineRule[] {
  const { rentPerDay } = rates.gas;
  if (quantities.purgeGas + quantities.torchGas === 0 || rentPerDay === null) return [];
  const taken = (frames: number): number | null => {
    const minutes = labour.minutes(frames);
    return minutes === null ? null : Math.max(1, Math.ceil(minutes / 60 / HOURS_A_DAY));
  };
  return [
    ratedRule({ key: 'bottle-rent', taken, rate: told(rentPerDay, '/rates/gas/rentPerDay') }, (frames) => ({
      unit: 'd',
      reckoning: {
        formula: 'd = ⌈t/(60 h)⌉, at least 1',
        inputs: () => [
          input('t', 'minutes', labour.minutes(frames) ?? 0, 'min'),
          input('h', 'hours-a-day', HOURS_A_DAY, 'h'),
        ],
        sources: ['practice'],
      },
      missing: labour.missing(frames),
    })),
  ];
}
