import type { WeldForm } from '../../job/welding.ts';
import { FILLET_RUNS, HANDBOOK_RUNS, MAKER_RUNS, tableCurrent } from './run-tables.ts';

/** Amperes for each mm of wall, a closed butt without filler: common practice, no source. */
export const CLOSED_BUTT = { low: 30, high: 40 } as const;
/** The least for each mm of wall with filler, 25 to 40 in use: common practice, no source. */
const LEAST_IN_USE = 25;
/** Thickest wall that is fused without filler [mm], "up to about 2 to 3": common practice, no source. */
export const FUSED_UP_TO = 3;
/** Thickest part that the table of fillets has a row for [mm]. */
export const THICKEST_FILLET = Math.max(...FILLET_RUNS.map(({ wall }) => wall));

/** A plate thicker than so many walls takes heat that no table knows of: it is told, and counts as no more; our own choice. */
export const THICK_PLATE = 3;

/** A band of current to begin with [A], what it rests on, and what no published table goes beyond. */
export type StartCurrent = {
  readonly low: number;
  readonly high: number;
  /** rule: amperes for each mm. runs: that, and the middles of two tables. fillet: a table of fillets. */
  readonly basis: 'rule' | 'runs' | 'fillet';
  /** True where the tables have nothing for this wall. */
  readonly beyond: boolean;
  /** Outside these a typed current is told [A]: the lowest of all, and the highest end of the tables. */
  readonly least: number;
  readonly most: number;
};

const middle = ({ low, high }: { readonly low: number; readonly high: number }): number => (low + high) / 2;

/**
 * Thickness that the high end of a fillet is read at [mm]: a plate takes its share of the heat, so the mean of tube and
 * plate, the plate as three walls at most, no thicker than the table goes and never less than the tube; our own choice.
 */
export const filletThickness = (wall: number, plate: number): number =>
  Math.max(wall, Math.min(THICKEST_FILLET, (wall + Math.min(plate, THICK_PLATE * wall)) / 2));

/**
 * Current to begin with. The tables are for flat work at 2.5 to 11 mm/s; by hand round a tube the torch goes slower, so
 * a butt with filler begins where one without does, and ends at the mean of the tables' middles: filler has to be melted
 * as well. It never ends below what is fused without filler.
 *
 * @param plate thickness of the plate under a pad [mm], 0 for the others
 */
export function startCurrent(form: WeldForm, process: '141' | '142', wall: number, plate = 0): StartCurrent {
  const handbook = tableCurrent(HANDBOOK_RUNS, wall);
  const maker = tableCurrent(MAKER_RUNS, wall);
  const fillet = tableCurrent(FILLET_RUNS, wall);
  const fused = Math.min(wall, FUSED_UP_TO);
  const alone = { low: CLOSED_BUTT.low * fused, high: CLOSED_BUTT.high * fused };
  const band =
    process === '142'
      ? ({ ...alone, basis: 'rule', beyond: wall > fused } as const)
      : form === 'butt'
        ? ({
            low: alone.low,
            high: Math.max(alone.high, (middle(handbook) + middle(maker)) / 2),
            basis: 'runs',
            beyond: handbook.beyond && maker.beyond,
          } as const)
        : ({
            low: fillet.low,
            high: tableCurrent(FILLET_RUNS, filletThickness(wall, plate)).high,
            basis: 'fillet',
            beyond: fillet.beyond,
          } as const);
  return {
    ...band,
    least: Math.min(band.low, LEAST_IN_USE * fused, handbook.low, maker.low),
    most: Math.max(band.high, handbook.high, maker.high, fillet.high),
  };
}
