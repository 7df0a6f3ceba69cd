import type { Said } from '../../plan/readings-fit.ts';
import type { Compared } from './fitted-figures.ts';

/** Two diagonals that differ by more than this many of their accuracies are worth saying; common practice. */
const DIFFER = 2;

/**
 * Why the readings do not go together: one that stands off all others, two diagonals that differ where the frame is
 * alike on both sides, or no single one.
 */
export function doubtOf(compared: readonly Compared[], misfit: number, doubtful: number): Said | null {
  const diagonals = diagonalsDiffer(compared);
  if (diagonals !== null) return diagonals;
  const off = compared.find(({ disagrees }) => disagrees);
  if (off !== undefined) {
    const { one, fitted } = off;
    const by = Math.abs(one.value - fitted);
    const key = one.unit === 'mm' ? 'doubt.reading-disagrees' : 'doubt.angle-disagrees';
    return { key, data: { off: rounded(by, one.unit) } };
  }
  return misfit > doubtful ? { key: 'doubt.readings-disagree', data: { misfit: rounded(misfit, 'mm') } } : null;
}

const rounded = (value: number, unit: 'mm' | 'deg'): number =>
  unit === 'mm' ? Math.round(value * 10) / 10 : Math.round(value * 100) / 100;

/** Sizes that are alike on both sides of a frame that is symmetric. */
const PAIRS = [['left-leg', 'right-leg']] as const;

function diagonalsDiffer(compared: readonly Compared[]): Said | null {
  const size = (key: string, index: number): Compared | undefined =>
    compared.find(({ one }) => one.size?.key === key && one.size.index === index);
  const [first, second] = [size('diagonal', 1), size('diagonal', 2)];
  if (first === undefined || second === undefined) return null;
  const apart = (a: Compared, b: Compared): number => a.one.value - a.wanted - (b.one.value - b.wanted);
  const differs = (a: Compared, b: Compared): boolean =>
    Math.abs(apart(a, b)) > DIFFER * Math.hypot(a.one.accuracy, b.one.accuracy);
  if (!differs(first, second)) return null;
  const unlike = PAIRS.some(([left, right]) => {
    const [a, b] = [size(left, 0), size(right, 0)];
    return a !== undefined && b !== undefined && differs(a, b);
  });
  if (unlike) return null;
  return { key: 'doubt.diagonals-differ', data: { difference: rounded(Math.abs(apart(first, second)), 'mm') } };
}
