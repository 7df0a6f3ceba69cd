import type { LogEntry, Operation } from '../../job/rates.ts';
import type { Figure, Unit, WorkingInput } from '../../plan/figure.ts';
import type { OwnTime } from '../../plan/quote.ts';
import { band, figure, input } from '../figure.ts';
import { OPERATIONS } from './operations.ts';

/** Less than this counts as not planned at all [min]: nobody takes the time of less; our own choice. */
const LEAST_PLANNED = 0.01;

/** One entry's value, and how much it weighs. */
type Sample = { readonly value: number; readonly weight: number };

/** A weighted mean with what it is made of; `spread` is null for one sample. */
type Mean = {
  readonly value: number;
  readonly spread: number | null;
  readonly sum: number;
  readonly weights: number;
  readonly entries: number;
};

/**
 * Mean of samples, x̄ = Σ w x / Σ w, and their standard deviation, s² = Σ w (x − x̄)² / (Σ w − Σ w²/Σ w): for equal weights
 * the usual one with n − 1.
 *
 * @param samples weights over 0; null for none
 */
function meanOf(samples: readonly Sample[]): Mean | null {
  const entries = samples.length;
  if (entries === 0) return null;
  const total = (of: (sample: Sample) => number): number => samples.reduce((sum, sample) => sum + of(sample), 0);
  const weights = total(({ weight }) => weight);
  const sum = total(({ value, weight }) => weight * value);
  const value = sum / weights;
  const freedom = weights - total(({ weight }) => weight ** 2) / weights;
  const scatter = total((sample) => sample.weight * (sample.value - value) ** 2);
  // of samples one of which outweighs all the others by far no spread can be told
  return { value, spread: entries > 1 && freedom > 0 ? Math.sqrt(scatter / freedom) : null, sum, weights, entries };
}

const once = (value: number): Sample => ({ value, weight: 1 });

/** What was worked by hand in an entry, without what follows from arc, waiting and grinding [min]. */
const byHand = ({ minutes, process }: LogEntry): number => Math.max(0, minutes - process);

/** What was taken for what was planned; weighed by what was planned, so that the mean is all taken over all planned. */
const ratios = (entries: readonly LogEntry[]): Sample[] =>
  entries
    .filter(({ planned }) => planned >= LEAST_PLANNED)
    .map(({ setUp, minutes, planned }) => ({ value: (setUp + minutes) / planned, weight: planned }));

/** Taken over planned of one operation: its mean, the spread of one entry, and how many entries tell it; null: none does. */
export const ownRatio = (log: readonly LogEntry[], operation: Operation): Mean | null =>
  meanOf(ratios(log.filter((entry) => entry.operation === operation)));

/**
 * What the times that were written down come to, operation by operation, in the order of the work. Set-up: every entry is a
 * sample. Each: (minutes − arc, waiting, grinding)/count, never under 0; weighed by the count, so that the mean gives back
 * all that was taken, and one long job tells more than one piece. Bands are the spread of one entry, one standard deviation.
 *
 * @param log entries [min]; those of no operation leave it out
 * @returns set-up [min], each [min], taken over planned [ratio]; the last null where nothing had been planned
 */
export function ownTimes(log: readonly LogEntry[]): OwnTime[] {
  return OPERATIONS.flatMap((operation): OwnTime[] => {
    const entries = log.filter((entry) => entry.operation === operation);
    const setUp = meanOf(entries.map((entry) => once(entry.setUp)));
    const each = meanOf(entries.map((entry) => ({ value: byHand(entry) / entry.count, weight: entry.count })));
    if (setUp === null || each === null) return [];
    const ratio = meanOf(ratios(entries));
    return [
      {
        operation,
        entries: entries.length,
        setUp: meanFigure(setUp, 'min', 't = S/k', [input('S', 'set-ups-taken', setUp.sum, 'min')]),
        each: meanFigure(each, 'min', 't = M/n', [
          input('M', 'taken-beside-arc-waiting-and-grinding', each.sum, 'min'),
          input('n', 'how-many-were-done', each.weights, 'count'),
        ]),
        ratio:
          ratio === null
            ? null
            : meanFigure(ratio, 'ratio', 'r = T/P', [
                input('T', 'all-that-was-taken', ratio.sum, 'min'),
                input('P', 'all-that-was-planned', ratio.weights, 'min'),
              ]),
      },
    ];
  });
}

const meanFigure = (mean: Mean, unit: Unit, formula: string, sums: readonly WorkingInput[]): Figure =>
  figure(
    mean.value,
    unit,
    formula,
    [...sums, input('k', 'entries', mean.entries, 'count')],
    ['own-times'],
    mean.spread === null ? null : band(mean.spread, 'spread-of-entries'),
  );
