import type { Unit } from '../../plan/figure.ts';

/**
 * What each finding says. `text` is the fact, `out` what a person can do. Parts in [square brackets] are left out
 * where the finding brings no data for them. `unit` is the unit of data.value, data.low and data.high; `measured`
 * begins the sentence that says them.
 */
export type FindingText = {
  readonly text: string;
  readonly unit: Unit;
  readonly out: string;
  readonly measured: string;
};

export const about = (unit: Unit, text: string, out: string, measured = 'It is'): FindingText => ({
  text,
  unit,
  out,
  measured,
});
