import type { Figure } from '../../server/plan/figure.ts';

const isFigure = (value: object): value is Figure => 'working' in value && 'unit' in value;

/** Every figure in a plan or a part of one, however deep. */
export function figuresIn(value: unknown): Figure[] {
  if (typeof value !== 'object' || value === null) return [];
  return isFigure(value) ? [value] : Object.values(value).flatMap(figuresIn);
}

/** What is wrong with the figures of a plan: a number that is none, an input that its formula does not speak of, no source. */
export function faultsOf(plan: unknown): string[] {
  return figuresIn(plan).flatMap(({ value, band, working }) => {
    const { formula, inputs, sources } = working;
    const numbers = [value, band?.plusMinus ?? 0, ...inputs.map((one) => one.value)];
    return [
      ...numbers.filter((one) => !Number.isFinite(one)).map((one) => `${formula}: ${String(one)}`),
      ...(band !== null && band.plusMinus < 0 ? [`${formula}: a band under 0`] : []),
      ...inputs.filter(({ symbol }) => !formula.includes(symbol)).map(({ symbol }) => `${formula}: no ${symbol}`),
      ...(sources.length === 0 ? [`${formula}: no source`] : []),
    ];
  });
}
