import type { Units } from '../job/job.ts';
import type { LegPlan } from '../plan/leg.ts';
import { formatBand } from './quantity-format.ts';
import { words } from './words.ts';

/** Bands nearer to each other than this are one [mm]: rounding. */
const SAME = 1e-6;

/**
 * How surely a leg fits that is set up after others: under the frame that they hold it may have to follow their sawing
 * too, which can be more than its own ±.
 */
export function thenWords({ bandThen, cutLength }: Pick<LegPlan, 'bandThen' | 'cutLength'>, units: Units): string {
  const band = formatBand({ plusMinus: bandThen.value, from: [] }, 'mm', units);
  const isMore = bandThen.value > (cutLength.band?.plusMinus ?? 0) + SAME;
  return words(isMore ? 'leg.bandThenMore' : 'leg.bandThen', { band });
}
