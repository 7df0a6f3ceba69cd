import type { Figure, Unit } from '../../server/plan/figure.ts';

/** A public number made by hand. */
export const figure = (value: number, unit: Unit, plusMinus: number | null = null): Figure => ({
  value,
  unit,
  band: plusMinus === null ? null : { plusMinus, from: ['tape'] },
  working: { formula: 'a = a', inputs: [], sources: ['typed'] },
});
