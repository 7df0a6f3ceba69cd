import type { Operation } from '../../job/rates.ts';
import type { WorkingInput } from '../../plan/figure.ts';
import type { QuotePart } from '../../plan/quote.ts';
import { input } from '../figure.ts';
import { BOTTLE_FIELD, bottlesFor, gasTask, type GasTask } from './gas-lines.ts';
import { ratedRule, type LineRule, type Taken } from './line-rule.ts';
import { MOST_QUANTITY } from './minor-units.ts';
import { OPERATIONS } from './operations.ts';
import type { Task } from './order.ts';
import { severalOf } from './parts.ts';
import { told, type Reckoning, type Told } from './priced-line.ts';

/** Labour with the machine behind it; minutes of all of it, null while one is open, and what is missing for them. */
export type Labour = {
  readonly times: readonly Time[];
  readonly rules: readonly LineRule[];
  readonly minutes: (frames: number) => number | null;
  readonly missing: (frames: number) => readonly string[];
};

/** Labour of every operation that is needed: set-up once, each and each metre and what the work itself takes n times. */
export function labourOf(task: Task, gas: GasTask = gasTask(task)): Labour {
  const times: Time[] = [];
  const rules: LineRule[] = [];
  for (const operation of OPERATIONS) {
    const time = timeOf(operation, task, gas);
    if (time === null) continue;
    times.push(time);
    addRules(rules, time, task);
  }
  return {
    times,
    rules,
    minutes: (frames) => {
      let sum = 0;
      for (const { minutes } of times) {
        const own = minutes(frames);
        if (own === null) return null;
        if (own !== undefined) sum += own;
      }
      return sum;
    },
    missing: (frames) => [
      ...new Set(times.flatMap(({ minutes, told: of }) => (minutes(frames) === undefined ? [] : of(frames).missing))),
    ],
  };
}

/** The time of one operation for any number of frames; undefined where there are so few that it is not needed. */
type Time = {
  readonly operation: Operation;
  readonly minutes: (frames: number) => Taken;
  readonly load: (frames: number) => Load;
  readonly told: (frames: number) => TimeTold;
};

/** How often it is done, what passes through it [m], and what follows from the work [min], for all frames. */
type Load = { readonly count: number | null; readonly metres: number; readonly process: number };

/** null where the operation is not needed at all, or somebody else does it. */
function timeOf(operation: Operation, { quantities, job }: Task, gas: GasTask): Time | null {
  if (operation === 'bend' && job.quote.bending === 'outside') return null;
  const each = quantities.counts[operation];
  const length = quantities.metres[operation];
  const process = quantities.process[operation];
  const ofBottles = operation === 'bottle' && gas.litres > 0;
  if (!ofBottles && (operation === 'bottle' || each === 0) && length === 0 && process === 0) return null;
  const countOf = (frames: number): number | null => {
    if (operation !== 'bottle') return each * frames;
    const begun = ofBottles ? bottlesFor(gas, frames) : 1;
    // the first bottle stands there already
    return begun === null ? null : begun - 1;
  };
  const rate = job.rates.labour[operation];
  const minutes = (frames: number): Taken => {
    const count = countOf(frames);
    const metres = length * frames;
    const worked = process * frames;
    if (count === 0 && metres === 0 && worked === 0) return undefined;
    const own = count === 0 ? 0 : rate.each.value;
    const ofMetres = metres === 0 ? 0 : rate.perMetre.value;
    if (count === null || rate.setUp.value === null || own === null || ofMetres === null) return null;
    const sum = worked + rate.setUp.value + own * count + ofMetres * metres;
    return sum <= MOST_QUANTITY ? sum : null;
  };
  const load = (frames: number): Load => ({
    count: countOf(frames),
    metres: length * frames,
    process: process * frames,
  });
  const tell = (frames: number): TimeTold =>
    timeTold(operation, load(frames), { job, parts: severalOf(quantities.parts[operation], frames) });
  return { operation, minutes, load, told: tell };
}

/** How a time came about. */
type TimeTold = {
  readonly missing: readonly string[];
  readonly needs: readonly Told[];
  readonly reckoning: Reckoning;
  readonly parts: readonly QuotePart[];
};

function timeTold(
  operation: Operation,
  { count, metres, process }: Load,
  { job, parts: ofWork }: { readonly job: Task['job']; readonly parts: readonly QuotePart[] },
): TimeTold {
  const rate = job.rates.labour[operation];
  const of = (key: 'setUp' | 'each' | 'perMetre'): Told => told(rate[key], `/rates/labour/${operation}/${key}`);
  const setUp = of('setUp');
  const each = count === 0 ? null : of('each');
  const perMetre = metres === 0 ? null : of('perMetre');
  const needs = [setUp, each, perMetre].filter((one) => one !== null);
  const parts = (
    [
      ['set-up', setUp.value ?? 0],
      ['each', (each?.value ?? 0) * (count ?? 0)],
      ['each-metre', (perMetre?.value ?? 0) * metres],
    ] as const
  ).flatMap(([key, value]): QuotePart[] => (value > 0 ? [{ key, name: '', value, unit: 'min' }] : []));
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
    missing: [
      ...needs.flatMap(({ value, field }) => (value === null ? [field] : [])),
      ...(count === null ? [BOTTLE_FIELD] : []),
    ],
    needs,
    reckoning: {
      formula: terms.length === 1 ? 'h = s/60' : `h = (${terms.join(' + ')})/60`,
      inputs,
      sources: ['typed', 'geometry'],
    },
    parts: [...parts, ...ofWork],
  };
}

function addRules(rules: LineRule[], { operation, minutes, told: tell }: Time, { job }: Task): void {
  const { hour, machine } = job.rates.labour[operation];
  const field = `/rates/labour/${operation}`;
  const taken = (frames: number): Taken => {
    const all = minutes(frames);
    return typeof all === 'number' ? all / 60 : all;
  };
  const more = (frames: number) => ({ unit: 'h' as const, ...tell(frames) });
  rules.push(ratedRule({ key: operation, taken, rate: told(hour, `${field}/hour`) }, more));
  if (machine === null) return;
  rules.push(ratedRule({ key: 'machine', of: operation, taken, rate: told(machine, `${field}/machine`) }, more));
}
