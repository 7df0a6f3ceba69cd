import { describe, expect, it } from 'vitest';
import type { SpliceProblem } from '../../server/solver/correction/splice/splice-problem.ts';
import { derivativesOf, residualsOf } from '../../server/solver/correction/splice/splice-residuals.ts';
import { stateAt, type State } from '../../server/solver/correction/splice/splice-state.ts';
import { leastSquares } from '../../server/solver/least-squares.ts';
import { randomSource } from '../properties/returned-scatter.ts';
import { randomPlace, randomProblem, randomTask, SIZES } from './random-splices.ts';

type Kind = 'target' | 'hi-lo' | 'kink' | 'new tube' | 'wander' | 'metal' | 'twist' | 'held';

/** Rows that belong together: both directions square to a joint, or a row by itself. */
type Group = { readonly kind: Kind; readonly rows: readonly number[] };

/** What the rows of a problem are, in the order of residualsOf. */
function groupsOf(problem: SpliceProblem, state: State, count: number): Group[] {
  const groups: Group[] = [];
  let row = 0;
  const take = (kind: Kind, ...rows: number[]) => groups.push({ kind, rows });
  const [axes, squares] = problem.planeNormal === null ? [3, 2] : [2, 1];
  for (const _ of problem.targets) for (let axis = 0; axis < axes; axis += 1) take('target', row++);
  for (const sides of state.sides) {
    const first = Array.from({ length: squares }, (_, square) => row + 2 * square);
    const second = first.map((one) => one + 1);
    row += 2 * squares;
    take(sides!.letIn === null ? 'hi-lo' : 'new tube', ...first);
    take(sides!.letIn === null ? 'kink' : 'new tube', ...second);
    take('wander', row++);
    take('metal', row++);
    if (problem.planeNormal === null) take('twist', row++);
  }
  while (row < count) take('held', row++);
  return groups;
}

/** Per one size of an unknown: rows that are exact everywhere, and what others may miss their largest by. */
const EXACT = 1e-6;
const NEARLY = { plane: 0.01, space: 0.03 } as const;

/** Differences that are off by rounding, per one size: hi-lo is counted in hundredths of a millimetre. */
const ROUNDING = 1e-6;

describe.each(['wide', 'narrow', 'space'] as const)('derivatives of a splice: %s', (kind) => {
  it.each([
    ['without bends', false],
    ['with bends that turn', true],
  ])('%s they are what differences find', (_, hinged) => {
    const random = randomSource(19);
    const seen = new Map<Kind, number>();
    for (let round = 0; round < 40; round += 1) {
      const task = randomTask(random, kind);
      const problem = randomProblem(random, task, hinged);
      const place = problem === undefined ? undefined : randomPlace(random, problem, 0.3);
      if (problem === undefined || place === undefined) continue;
      const { search, values, state } = place;
      const at = (given: readonly number[]) => residualsOf(search, stateAt(search, given), given);
      const now = at(values);
      const slopes = derivativesOf(search, state);
      expect(slopes).toHaveLength(now.length);
      const sizes = [...search.freedoms.map((one) => SIZES[one.kind]), ...problem.joints.map(() => SIZES.middle)];
      const differences = values.map((_, column) => {
        const step = 1e-4 * sizes[column]!;
        const [more, less] = [1, -1].map((sign) =>
          at(values.map((value, index) => (index === column ? value + sign * step : value))),
        );
        return now.map((_, row) => (more![row]! - less![row]!) / 2e-4);
      });
      for (const group of groupsOf(problem, state, now.length)) {
        const length = Math.hypot(...group.rows.map((row) => now[row]!));
        // where metal just begins to be missing there is a corner
        if (group.kind === 'metal' && length < 1) continue;
        const largest = Math.max(...group.rows.flatMap((row) => differences.map((one) => Math.abs(one[row]!))));
        const exact = ['target', 'wander', 'held'].includes(group.kind) || (group.kind === 'hi-lo' && kind !== 'space');
        const allowed = exact ? EXACT * (1 + largest) : NEARLY[kind === 'space' ? 'space' : 'plane'] * largest;
        for (const [column, found] of differences.entries()) {
          const own = group.rows.map((row) => slopes[row]![column]! * sizes[column]!);
          // the two directions square to a joint may turn about the tube: what counts is the length of the pair
          const off =
            group.rows.length === 1 || length === 0
              ? Math.max(...own.map((one, index) => Math.abs(one - found[group.rows[index]!]!)))
              : Math.abs(
                  group.rows.reduce((sum, row, index) => sum + now[row]! * (own[index]! - found[row]!), 0) / length,
                );
          expect(off, `${group.kind}, column ${String(column)}`).toBeLessThan(allowed + ROUNDING);
        }
        seen.set(group.kind, (seen.get(group.kind) ?? 0) + 1);
      }
    }
    for (const needed of ['target', 'hi-lo', 'kink', 'wander', 'metal'] as const)
      expect(seen.get(needed) ?? 0, needed).toBeGreaterThan(3);
    if (kind === 'narrow') expect(seen.get('new tube') ?? 0).toBeGreaterThan(3);
  });

  it('what is left out keeps no search from its end: differences gain nothing more', () => {
    const random = randomSource(23);
    let solved = 0;
    for (let round = 0; round < 25; round += 1) {
      const problem = randomProblem(random, randomTask(random, kind), round % 2 === 1);
      const place = problem === undefined ? undefined : randomPlace(random, problem, 0);
      if (problem === undefined || place === undefined) continue;
      const { search, values } = place;
      const at = (given: readonly number[]) => residualsOf(search, stateAt(search, given), given);
      const cost = at(values).reduce((sum, one) => sum + one * one, 0);
      const unknowns = values.map((start, index) => {
        const freedom = search.freedoms[index];
        if (freedom === undefined) {
          const { low, high } = problem.joints[index - search.freedoms.length]!;
          return { start, size: SIZES.middle, low, high };
        }
        const { hinge } = freedom;
        return { start, size: SIZES[freedom.kind], ...(hinge === null ? {} : { low: hinge.low, high: hinge.high }) };
      });
      const more = leastSquares(unknowns, at);
      expect(cost - more.cost, `round ${String(round)}`).toBeLessThan(1e-2 + 2e-3 * cost);
      solved += 1;
    }
    expect(solved).toBeGreaterThan(5);
  });
});
