import type { FittedReading, ReadingsFit } from '../../plan/readings-fit.ts';
import type { Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import { sumOfSquares } from './fit-unknowns.ts';
import type { Measured } from './readings.ts';

/** A reading with what the wanted frame and the fitted one have there. */
export type Compared = {
  readonly one: Measured;
  readonly wanted: number;
  readonly fitted: number;
  readonly disagrees: boolean;
};

/** The readings as the plan shows them. */
export const fittedReadings = (all: readonly Compared[]): FittedReading[] =>
  all.map(({ one, wanted, fitted, disagrees }) => {
    const { unit, value, accuracy, field, name } = one;
    const plain = (amount: number, formula: string, called: string): Figure =>
      figure(amount, unit, formula, [input('v', called, amount, unit)], ['path-model']);
    const measured = figure(value, unit, 'm', [input('m', 'reading', value, unit)], ['typed'], band(accuracy, 'tape'));
    const residual = figure(
      value - fitted,
      unit,
      'r = m − f',
      [input('m', 'reading', value, unit), input('f', 'fitted', fitted, unit)],
      ['readings-fit'],
    );
    return {
      field,
      name: { key: name.key, data: { ...name.data } },
      wanted: plain(wanted, 'w', 'on-the-wanted-frame'),
      measured,
      fitted: plain(fitted, 'f', 'on-the-fitted-frame'),
      residual,
      accuracies: (value - fitted) / accuracy,
      disagrees,
    };
  });

/** Root of the mean square of the residuals of all readings that agree, in accuracies. */
export function misfitFigure(all: readonly Compared[]): ReadingsFit['misfit'] {
  const residuals = all.flatMap(({ one, fitted, disagrees }) =>
    disagrees ? [] : [(one.value - fitted) / one.accuracy],
  );
  const value = residuals.length === 0 ? 0 : Math.sqrt(sumOfSquares(residuals) / residuals.length);
  return figure(
    value,
    'ratio',
    'm = √(Σ (r / a)² / n)',
    [input('n', 'readings', residuals.length, 'count')],
    ['readings-fit'],
  );
}
