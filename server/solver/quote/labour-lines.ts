import type { Operation } from '../../job/rates.ts';
import type { WorkingInput } from '../../plan/figure.ts';
import type { QuotePart } from '../../plan/quote.ts';
import { input } from '../figure.ts';
import { BOTTLE_FIELD, type GasNeed } from './gas-lines.ts';
import { MOST_QUANTITY } from './minor-units.ts';
import type { Order } from './order.ts';
import { severalOf } from './parts.ts';
import { ratedLine, told, type PricedLine, type Reckoning, type Told } from './priced-line.ts';
import { OPERATIONS } from './operations.ts';

/** Labour with the machine behind it; minutes of all of it, null while one is open, and what is missing for them. */
export type Labour = {
  readonly lines: readonly PricedLine[];
  readonly minutes: number | null;
  readonly missing: readonly string[];
};

/** How often an operation is done, what passes through it [m] and what follows from the work [min], for all frames. */
type Load = { readonly count: number | null; readonly metres: number; readonly process: number };

/** Labour of every operation that is needed: set-up once, each and each metre and what the work itself takes n times. */
export function labourLines(order: Order, gas: GasNeed): Labour {
  const lines: PricedLine[] = [];
  const missing = new Set<string>();
  let minutes: number | null = 0;
  for (const operation of OPERATIONS) {
    const load = loadOf(operation, order, gas);
    if (load === null) continue;
    const time = timeOf(operation, load, order);
    for (const field of time.missing) missing.add(field);
    minutes = minutes === null || time.minutes === null ? null : minutes + time.minutes;
    lines.push(...linesOf(operation, time, order));
  }
  return { lines, minutes, missing: [...missing] };
}

/** null where the operation is not needed, or somebody else does it. */
function loadOf(operation: Operation, { quantities, job, quantity }: Order, gas: GasNeed): Load | null {
  if (operation === 'bend' && job.quote.bending === 'outside') return null;
  const begun = operation === 'bottle' && gas.litres > 0 ? gas.bottles : 1;
  // the first bottle stands there already
  const count = operation === 'bottle' ? (begun === null ? null : begun - 1) : quantities.counts[operation] * quantity;
  const metres = quantities.metres[operation] * quantity;
  const process = quantities.process[operation] * quantity;
  return count === 0 && metres === 0 && process === 0 ? null : { count, metres, process };
}

type Time = {
  readonly minutes: number | null;
  readonly missing: readonly string[];
  readonly needs: readonly Told[];
  readonly reckoning: Reckoning;
  readonly parts: readonly QuotePart[];
};

function timeOf(operation: Operation, { count, metres, process }: Load, { quantities, job, quantity }: Order): Time {
  const rate = job.rates.labour[operation];
  const of = (key: 'setUp' | 'each' | 'perMetre'): Told => told(rate[key], `/rates/labour/${operation}/${key}`);
  const setUp = of('setUp');
  const each = count === 0 ? null : of('each');
  const perMetre = metres === 0 ? null : of('perMetre');
  const needs = [setUp, each, perMetre].filter((one) => one !== null);
  const missing = needs.flatMap(({ value, field }) => (value === null ? [field] : []));
  const parts = (
    [
      ['set-up', setUp.value ?? 0],
      ['each', (each?.value ?? 0) * (count ?? 0)],
      ['each-metre', (perMetre?.value ?? 0) * metres],
    ] as const
  ).flatMap(([key, value]): QuotePart[] => (value > 0 ? [{ key, name: '', value, unit: 'min' }] : []));
  const sum = parts.reduce((total, { value }) => total + value, process);
  const known = count !== null && missing.length === 0 && sum <= MOST_QUANTITY;
  const inputs = (): WorkingInput[] => [
    input('s', 'set-up-time', setUp.value ?? 0, 'min'),
    ...(each === null
      ? []
      : [input('n', `count-${operation}`, count ?? 0, 'count'), input('e', 'time-each', each.value ?? 0, 'min')]),
    ...(perMetre === null
      ? []
      : [input('ℓ', 'length', metres, 'm'), input('m', 'time-each-metre', perMetre.value ?? 0, 'min/m')]),
    ...(process === 0 ? [] : [input('x', 'process-time', process, 'min')]),
  ];
  const terms = [
    's',
    ...(each === null ? [] : ['n e']),
    ...(perMetre === null ? [] : ['ℓ m']),
    ...(process === 0 ? [] : ['x']),
  ];
  return {
    minutes: known ? sum : null,
    missing: [...missing, ...(count === null ? [BOTTLE_FIELD] : [])],
    needs,
    reckoning: {
      formula: terms.length === 1 ? 'h = s/60' : `h = (${terms.join(' + ')})/60`,
      inputs,
      sources: ['typed', 'geometry'],
    },
    parts: [...parts, ...severalOf(quantities.parts[operation], quantity)],
  };
}

function linesOf(
  operation: Operation,
  { minutes, missing, needs, reckoning, parts }: Time,
  { job }: Order,
): PricedLine[] {
  const { hour, machine } = job.rates.labour[operation];
  const field = `/rates/labour/${operation}`;
  const common = {
    quantity: minutes === null ? null : minutes / 60,
    unit: 'h',
    reckoning,
    needs,
    missing,
    parts,
  } as const;
  const labour = ratedLine({ ...common, key: operation, rate: told(hour, `${field}/hour`) });
  if (machine === null) return [labour];
  return [labour, ratedLine({ ...common, key: 'machine', of: operation, rate: told(machine, `${field}/machine`) })];
}
