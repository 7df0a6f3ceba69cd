import type { Band, Figure, Unit, WorkingInput } from '../plan/figure.ts';
import type { SourceKey } from './sources.ts';

/** One input of a working: symbol in the formula, name (language key `input.<name>`), value and unit. */
export const input = (symbol: string, name: string, value: number, unit: Unit): WorkingInput => ({
  symbol,
  name,
  value,
  unit,
});

/** The ± of a number and what it comes from (language keys `band.<name>`). */
export const band = (plusMinus: number, ...from: string[]): Band => ({ plusMinus, from });

/**
 * A public number with its working.
 *
 * @param value the number, in `unit`
 * @param unit its unit
 * @param formula the formula in symbols, the result's symbol first: 'm = π ρ (D − t) t'
 * @param inputs what went in
 * @param sources keys of server/solver/sources.ts; never empty
 * @param plusMinus its band, or null where the number is exact for its inputs
 */
export function figure(
  value: number,
  unit: Unit,
  formula: string,
  inputs: readonly WorkingInput[],
  sources: readonly [SourceKey, ...SourceKey[]],
  plusMinus: Band | null = null,
): Figure {
  return { value, unit, band: plusMinus, working: { formula, inputs: [...inputs], sources: [...sources] } };
}
