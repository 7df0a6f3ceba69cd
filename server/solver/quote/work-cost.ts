import type { Job } from '../../job/job.ts';
import { exactCost, exactTube, rulesFor, type Rules } from './price-of.ts';
import type { Quantities } from './quantities.ts';

/** What one piece of work is bought and done for, asked again and again with one thing of it changed. */
export type WorkCost = {
  /** For so many frames, before lines are rounded [minor]; null while a line stands open. */
  readonly at: (frames: number) => number | null;
  readonly rules: Rules;
  /** The same work at rates of labour, or with an offer, of another job: its tube is the same. */
  readonly priced: (job: Job) => WorkCost;
  /** The same rates for work that takes other quantities. */
  readonly taking: (quantities: Quantities) => WorkCost;
};

/** Tube by first fit or by the metre, never by a kept layout: that is for one number of frames alone. */
export function workCost(quantities: Quantities, job: Job, tube = tubeCost(quantities, job)): WorkCost {
  const rules = rulesFor({ quantities, job });
  return {
    rules,
    at: (frames) => exactCost(rules, frames, tube(frames)),
    priced: (other) => workCost(quantities, other, tube),
    taking: (other) => workCost(other, job, other.pieces === quantities.pieces ? tube : tubeCost(other, job)),
  };
}

type TubeCost = (frames: number) => number | null;

function tubeCost(quantities: Quantities, job: Job): TubeCost {
  const known = new Map<number, number | null>();
  return (frames) => {
    const found = known.get(frames);
    if (found !== undefined) return found;
    const cost = exactTube({ quantities, job, quantity: frames });
    known.set(frames, cost);
    return cost;
  };
}
