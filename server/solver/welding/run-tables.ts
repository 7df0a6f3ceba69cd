/** Currents of one run [A] for a wall [mm], as a table prints them. */
export type RunRow = { readonly wall: number; readonly low: number; readonly high: number };

const row = (wall: number, low: number, high: number): RunRow => ({ wall, low, high });

/** Single-run TIG butt in stainless, at 66 down to 30 cm/min: Chinese Welding Handbook, vol. 1, 2nd ed., p. 150. */
export const HANDBOOK_RUNS: readonly RunRow[] = [
  row(0.8, 20, 50),
  row(1, 50, 80),
  row(1.5, 65, 105),
  row(2.4, 85, 125),
  row(3.2, 100, 135),
];

/** Flat TIG butt in stainless, at 15 to 40 cm/min: a maker of welding equipment, seen second-hand. */
export const MAKER_RUNS: readonly RunRow[] = [
  row(0.5, 10, 15),
  row(1, 30, 40),
  row(1.5, 60, 100),
  row(2.5, 100, 120),
  row(3, 120, 140),
];

/** TIG fillets in stainless: a gas supplier's handbook for welders. */
export const FILLET_RUNS: readonly RunRow[] = [row(1.6, 50, 70), row(3.2, 85, 105)];

/** Currents for a wall, and whether the wall is one that the table has nothing for. */
export type TableCurrent = { readonly low: number; readonly high: number; readonly beyond: boolean };

/**
 * Currents of a table for a wall [A]: between its rows in proportion; above its last row as there, so that nothing is
 * carried on beyond it; below its first row as many amperes for each mm as there, because thin tube burns through.
 */
export function tableCurrent(rows: readonly RunRow[], wall: number): TableCurrent {
  let before: RunRow = row(0, 0, 0);
  for (const [index, here] of rows.entries()) {
    if (wall <= here.wall) {
      const share = (wall - before.wall) / (here.wall - before.wall);
      return {
        low: before.low + share * (here.low - before.low),
        high: before.high + share * (here.high - before.high),
        beyond: index === 0 && wall < here.wall,
      };
    }
    before = here;
  }
  return { low: before.low, high: before.high, beyond: true };
}
