import type { Figure } from '../../plan/figure.ts';
import { figure, input } from '../figure.ts';

/** Oxygen in the backing gas of the samples of AWS D18.2, numbers 1 to 10 [ppm]. */
const SAMPLES = [10, 25, 50, 100, 200, 500, 1000, 5000, 12_500, 25_000] as const;

/** Number of the sample whose gas held no less oxygen than the target, or the last; it names a tint and is no limit. */
export function tintSample(target: number): number {
  const index = SAMPLES.findIndex((ppm) => ppm >= target);
  return index < 0 ? SAMPLES.length : index + 1;
}

export function tintFigure(target: number): Figure {
  const sample = tintSample(target);
  const oxygen = SAMPLES[sample - 1] ?? 0;
  const formula = oxygen < target ? 'n: the last, as C_n < C₂' : 'n: the first with C_n ≥ C₂';
  return figure(
    sample,
    'count',
    formula,
    [input('C₂', 'target-oxygen', target, 'ppm'), input('C_n', 'sample-oxygen', oxygen, 'ppm')],
    ['aws-d18-2'],
  );
}
