import type { PlannedTime } from '../../plan/quote.ts';
import { labourOf } from './labour-lines.ts';
import type { Quantities } from './quantities.ts';
import type { SettledJob } from '../../job/job.ts';

/**
 * The times of a piece of work for the first quantity of a job, so that what it really took can be written down beside them:
 * what is done by hand is minutes less process, and that over the count is the time of each.
 *
 * @returns [min]; operations that are needed, in the order of the work
 */
export function plannedTimes(quantities: Quantities, job: SettledJob): PlannedTime[] {
  const frames = job.quote.quantities[0] ?? 1;
  return labourOf({ quantities, job }).times.flatMap(({ operation, minutes, load }): PlannedTime[] => {
    const all = minutes(frames);
    if (all === undefined) return [];
    const { setUp, perMetre } = job.rates.labour[operation];
    const { count, metres, process } = load(frames);
    const known = all === null || setUp.value === null ? null : all - setUp.value;
    const ofMetres = metres === 0 ? 0 : metres * (perMetre.value ?? 0);
    return [
      { operation, count: Math.round(count ?? 0), setUp: setUp.value, minutes: known, process: process + ofMetres },
    ];
  });
}
