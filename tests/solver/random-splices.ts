import { hingesOf } from '../../server/solver/correction/splice/hinges.ts';
import { layoutOf } from '../../server/solver/correction/splice/layouts.ts';
import { groundOf, type SpliceTask } from '../../server/solver/correction/splice/search-splices.ts';
import { solveSplice } from '../../server/solver/correction/splice/solve-splice.ts';
import { leastLetIn, spliceProblem, type SpliceProblem } from '../../server/solver/correction/splice/splice-problem.ts';
import { searchOf, stateAt, type Search, type State } from '../../server/solver/correction/splice/splice-state.ts';
import { dot } from '../../server/solver/geometry/vector.ts';
import { deformed, members } from '../properties/returned-frames.ts';
import type { randomSource } from '../properties/returned-scatter.ts';
import { drawnAs, hoopOf, taskOf } from '../properties/spliced-frames.ts';

type Random = ReturnType<typeof randomSource>;

/** A hoop that came back too wide or too narrow, or two bent legs in space with a rail and a bow between them. */
export function randomTask({ uniform, normal }: Random, kind: 'wide' | 'narrow' | 'space'): SpliceTask {
  if (kind === 'space') {
    const wanted = drawnAs(members);
    return taskOf(
      wanted,
      deformed(wanted, () => 0.15 * normal()),
    );
  }
  const width = 800 + 300 * uniform();
  const change = (kind === 'narrow' ? -1 : 1) * (10 + 50 * uniform());
  const made = width + change;
  const wanted = hoopOf({ width, legs: [600, 600], crown: 2400, bars: [150] });
  const sizes = { width: made, widthAtFeet: made + 4 * normal(), legs: [600, 610] as const };
  return taskOf(wanted, hoopOf({ ...sizes, crown: 2400, bars: [150] }));
}

/** Joints on some of the longer stretches, each somewhere near its middle; undefined where they part nothing. */
export function randomProblem({ uniform }: Random, task: SpliceTask, hinged: boolean): SpliceProblem | undefined {
  const { graph, stretches, memberIndex } = groundOf(task);
  const places = stretches
    .filter(({ from, to }) => to - from > 150 && uniform() < 0.5)
    .map((stretch) => ({
      stretch,
      at: stretch.from + (0.3 + 0.4 * uniform()) * (stretch.to - stretch.from),
      movable: true,
    }));
  if (places.length === 0) return undefined;
  const { frame, targets, planeNormal, sizes } = task;
  const problemOf = (bends: Parameters<typeof layoutOf>[2] = [], bent: Parameters<typeof spliceProblem>[6] = null) =>
    spliceProblem(layoutOf(graph, places, bends), frame, memberIndex, targets, planeNormal, sizes, bent);
  const plain = problemOf();
  if (plain === undefined || !hinged) return plain;
  const cuts = places.map(({ stretch, at }) => ({ member: stretch.member, station: at }));
  const hinges = hingesOf(graph, cuts, () => ({ low: -0.1, high: 0.1 }));
  const like = solveSplice(plain);
  return like === undefined || hinges.length === 0 ? undefined : problemOf(hinges, { hinges, like });
}

/** A problem near its end, with values that are a little off in every direction. */
export function randomPlace(
  { normal }: Random,
  problem: SpliceProblem,
  off: number,
): { search: Search; values: number[]; state: State } | undefined {
  const solved = solveSplice(problem);
  if (solved === undefined) return undefined;
  const search = searchOf(problem);
  const sizes = [...search.freedoms.map(({ kind }) => SIZES[kind]), ...problem.joints.map(() => SIZES.middle)];
  const values = solved.values.map((value, index) => value + off * (sizes[index] ?? 0) * normal());
  const state = stateAt(search, values);
  // new tube shorter than any that is let in is no joint
  const isOne = state.sides.every((sides) => {
    if (sides === undefined) return false;
    return sides.letIn === null || dot(sides.gap, sides.along) > leastLetIn(problem.sizes.outsideDiameter) / 2;
  });
  return isOne ? { search, values, state } : undefined;
}

/** What one step of each unknown is counted in [mm, rad]. */
export const SIZES = { shift: 1, turn: 1e-3, bend: 1e-2, middle: 10 } as const;
