import type { ArcPiece } from '../../geometry/centreline.ts';
import type { Candidate } from './candidate.ts';
import { candidateOf } from './candidate.ts';
import { hingesOf, type Hinge } from './hinges.ts';
import { layoutOf } from './layouts.ts';
import type { Ground, SpliceTask } from './search-splices.ts';
import { solveSplice, type SolvedSplice } from './solve-splice.ts';
import { searchOf, stateAt } from './splice-state.ts';
import { spliceProblem } from './splice-problem.ts';

/** How far a die bend of the frame may be opened and closed [rad]; undefined: not at all. */
export type TurnLimits = (arc: ArcPiece, member: number, piece: number) => { low: number; high: number } | undefined;

/** A bend and how far it is turned [rad]. */
export type TurnedHinge = { readonly hinge: Hinge; readonly turn: number };

/** A turn smaller than this is no turn [rad]: 0.01 degrees, well inside any machine's scatter. */
const LEAST_TURN = (0.01 * Math.PI) / 180;

/** What turning bends as well must gain to be worth the way to the bender: a fifth of the misfit; our own choice. */
const WORTH = 0.8;

/**
 * A splice whose bends are turned a little as well, so that what the cuts leave over goes too. Bends in a loop that no
 * cut opens stay as they are.
 *
 * @returns undefined where the frame has no bend that could be turned, or where turning gains too little
 */
export function splicedAndRebent(
  { splice, fixingMisfit, cornerMisfit, largestKink }: Candidate,
  ground: Ground,
  task: SpliceTask,
  limits: TurnLimits,
): { candidate: Candidate; turned: TurnedHinge[] } | undefined {
  const places = splice.joints.map(({ joint, middle }) => ({ ...joint.place, at: middle }));
  const cuts = places.map(({ stretch, at }) => ({ member: stretch.member, station: at }));
  const hinges = hingesOf(ground.graph, cuts, limits);
  if (hinges.length === 0) return undefined;
  const layout = layoutOf(ground.graph, places, hinges);
  const { frame, targets, posts, planeNormal, sizes } = task;
  const problem = spliceProblem(
    layout,
    frame,
    ground.memberIndex,
    targets,
    planeNormal,
    sizes,
    { hinges, like: splice },
    posts,
  );
  const solved = problem === undefined ? undefined : solveSplice(problem);
  if (solved === undefined) return undefined;
  const candidate = candidateOf(solved, task.wall);
  const turned = hinges
    .map((hinge, index) => ({ hinge, turn: solved.turns[index] ?? 0 }))
    .filter(({ turn }) => Math.abs(turn) > LEAST_TURN);
  const worst = Math.max(candidate.fixingMisfit, candidate.cornerMisfit);
  const gains = worst < WORTH * Math.max(fixingMisfit, cornerMisfit) || candidate.largestKink < WORTH * largestKink;
  return candidate.possible && turned.length > 0 && gains ? { candidate, turned } : undefined;
}

/** The same splice with one bend after the other turned by a little more; joints stay as they are planned. */
export function scatteredTurns(splice: SolvedSplice, off: number): SolvedSplice[] {
  const search = searchOf(splice.problem);
  return search.freedoms.flatMap(({ hinge }, column): SolvedSplice[] => {
    if (hinge === null) return [];
    const values = splice.values.map((value, index) => (index === column ? value + off : value));
    const turns = splice.problem.hinges.map((one, index) =>
      one.hinge === hinge ? (splice.turns[index] ?? 0) + off : (splice.turns[index] ?? 0),
    );
    return [{ ...splice, values, turns, motions: stateAt(search, values).motions }];
  });
}
