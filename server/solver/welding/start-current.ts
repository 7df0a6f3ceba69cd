import type { WeldForm } from '../../job/welding.ts';
import { FILLET_RUNS, HANDBOOK_RUNS, MAKER_RUNS, tableCurrent } from './run-tables.ts';

/** Amperes for each mm of wall, a closed butt without filler: common practice, no source. */
export const CLOSED_BUTT = { low: 30, high: 40 } as const;
/** The same with filler, 25 to 40 in use: the low end of a band is this share of its high end. */
export const IN_USE = { low: 25, high: 40 } as const;
/** Thickest wall that is fused without filler [mm], "up to about 2 to 3": common practice, no source. */
export const FUSED_UP_TO = 3;

/** A band of current to begin with [A], what it rests on, and what no published table goes beyond. */
export type StartCurrent = {
  readonly low: number;
  readonly high: number;
  /** rule: amperes for each mm. runs: the low ends of two tables. fillet: a table of fillets. */
  readonly basis: 'rule' | 'runs' | 'fillet';
  /** True where the tables have nothing for this wall. */
  readonly beyond: boolean;
  /** Outside these a typed current is told [A]: the lowest of all, and the highest end of the tables. */
  readonly least: number;
  readonly most: number;
};

/**
 * Current to begin with. Round a tube by hand the torch goes at the slow end of what the tables have, so a butt with
 * filler ends at the mean of their low ends (which is near 40 A/mm) and begins at 25/40 of that.
 */
export function startCurrent(form: WeldForm, process: '141' | '142', wall: number): StartCurrent {
  const handbook = tableCurrent(HANDBOOK_RUNS, wall);
  const maker = tableCurrent(MAKER_RUNS, wall);
  const fillet = tableCurrent(FILLET_RUNS, wall);
  const runs = (handbook.low + maker.low) / 2;
  const fused = Math.min(wall, FUSED_UP_TO);
  const band =
    process === '142'
      ? ({ low: CLOSED_BUTT.low * fused, high: CLOSED_BUTT.high * fused, basis: 'rule', beyond: wall > fused } as const)
      : form === 'butt'
        ? ({
            low: (IN_USE.low / IN_USE.high) * runs,
            high: runs,
            basis: 'runs',
            beyond: handbook.beyond && maker.beyond,
          } as const)
        : ({ low: fillet.low, high: fillet.high, basis: 'fillet', beyond: fillet.beyond } as const);
  return {
    ...band,
    least: Math.min(band.low, (IN_USE.low / IN_USE.high) * runs),
    most: Math.max(band.high, handbook.high, maker.high, fillet.high),
  };
}
