import { quadratic, type Knowledge } from './doubt.ts';
import { parametersOf, type FitProblem } from './fit-problem.ts';
import type { Fitted } from './fit-unknowns.ts';
import { leftWithHold } from './information.ts';
import { layAgain, layFrame } from './lay-frame.ts';
import type { Size } from './sizes.ts';

/** A size counts as measured when the readings leave it less than this share of what it could be off; our own choice. */
const MEASURED = 0.15;

const STEP = 1e-4;

/**
 * The sizes that the readings say nothing about: what each could be off by its deviations' own sizes, against what is
 * left of that after the readings. A closed tube closes in both.
 */
export function notMeasured(
  problem: FitProblem,
  fitted: Fitted,
  { left }: Knowledge,
  sizes: readonly Size[],
): { key: string; index: number }[] {
  const { model, free, measured } = problem;
  const count = problem.sizes.length;
  const columnOf = new Map(free.map((parameter, column) => [parameter, column]));
  const values = parametersOf(problem, fitted.unknowns);
  const laid = layFrame(model, values);
  const slopes = new Map<Size, { free: Float64Array; others: number }>(
    sizes.map((size) => [size, { free: new Float64Array(count), others: 0 }]),
  );
  for (const [index, parameter] of model.parameters.entries()) {
    const which = model.after[parameter.member] ?? [];
    const moved = sizes.filter(({ members }) => members.some((member) => which.includes(member)));
    if (moved.length === 0) continue;
    const before = values[index] ?? 0;
    const at = (value: number) => {
      values[index] = value;
      const changed = laid.slice();
      layAgain(model, which, values, changed);
      const lines = changed.map(({ line }) => line);
      return moved.map((size) => size.value(lines, 0) ?? 0);
    };
    const [more, less] = [at(before + STEP * parameter.size), at(before - STEP * parameter.size)];
    values[index] = before;
    const column = columnOf.get(index);
    moved.forEach((size, place) => {
      const slope = ((more[place] ?? 0) - (less[place] ?? 0)) / (2 * STEP);
      const into = slopes.get(size);
      if (into === undefined) return;
      if (column === undefined) into.others += slope * slope;
      else into.free[column] = slope;
    });
  }
  const closing = fitted.slopes.slice(measured.length);
  const closes = closing.length === 0 ? null : leftWithHold(closing, count);
  return sizes.flatMap((size) => {
    const slope = slopes.get(size);
    if (slope === undefined) return [];
    const before =
      slope.others +
      (closes === null ? slope.free.reduce((sum, one) => sum + one * one, 0) : quadratic(closes, slope.free));
    const after = slope.others + (count === 0 ? 0 : quadratic(left, slope.free));
    const known = before > NOTHING && after < MEASURED ** 2 * before;
    return known ? [] : [{ key: size.check.key, index: size.check.index }];
  });
}

/** A size that could be off by less than this is no size [mm²]; rounding. */
const NOTHING = 1e-12;
