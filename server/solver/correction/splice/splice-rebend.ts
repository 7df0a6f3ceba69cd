import type { ArcPiece } from '../../geometry/centreline.ts';
import type { Candidate } from './candidate.ts';
import { candidateOf } from './candidate.ts';
import { hingesOf, type Hinge } from './hinges.ts';
import { layoutOf } from './layouts.ts';
import type { Ground, SpliceTask } from './search-splices.ts';
import { VISIBLE_KINK } from '../weld-limits.ts';
import { solveSplice, type SolvedSplice } from './solve-splice.ts';
import { searchOf, stateAt } from './splice-state.ts';
import { spliceProblem } from './splice-problem.ts';

/** How far a die bend of the frame may be opened and closed [rad]; undefined: not at all. */
export type TurnLimits = (arc: ArcPiece, member: number, piece: number) => { low: number; high: number } | undefined;

/** A bend and how far it is turned [rad]. */
export type TurnedHinge = { readonly hinge: Hinge; readonly turn: number };

/** What turning bends as well must gain to be worth the way to the bender: a fifth of the misfit; our own choice. */
const WORTH = 0.8;

/**
 * A splice whose bends are turned a little as well, so that what the cuts leave over goes too. Bends in a loop that no
 * cut opens stay as they are, and so do bends that would be turned by less than the machine scatters.
 *
 * @param limits how far each bend may be turned; `least` what the machine can make [rad]
 * @returns undefined where the frame has no bend that could be turned, or where turning gains too little
 */
export function splicedAndRebent(
  { splice, fixingMisfit, cornerMisfit, largestKink }: Candidate,
  ground: Ground,
  task: SpliceTask,
  { limits, least }: { readonly limits: TurnLimits; readonly least: number },
): { candidate: Candidate; turned: TurnedHinge[] } | undefined {
  const places = splice.joints.map(({ joint, middle }) => ({ ...joint.place, at: middle }));
  const cuts = places.map(({ stretch, at }) => ({ member: stretch.member, station: at }));
  const { frame, targets, posts, planeNormal, sizes } = task;
  let hinges = hingesOf(ground.graph, cuts, limits);
  while (hinges.length > 0) {
    const layout = layoutOf(ground.graph, places, hinges);
    const bent = { hinges, like: splice };
    const problem = spliceProblem(layout, frame, ground.memberIndex, targets, planeNormal, sizes, bent, posts);
    const solved = problem === undefined ? undefined : solveSplice(problem);
    if (solved === undefined) return undefined;
    const turned = hinges.map((hinge, index) => ({ hinge, turn: solved.turns[index] ?? 0 }));
    const [smallest] = [...turned].sort((a, b) => Math.abs(a.turn) - Math.abs(b.turn));
    if (smallest !== undefined && Math.abs(smallest.turn) < least) {
      // what it did the others may take over
      hinges = hinges.filter((hinge) => hinge !== smallest.hinge);
      continue;
    }
    const candidate = candidateOf(solved, task.wall);
    const [before, after] = [
      Math.max(fixingMisfit, cornerMisfit),
      Math.max(candidate.fixingMisfit, candidate.cornerMisfit),
    ];
    const nearer = before > sizes.tape && after < WORTH * before;
    const fairer = largestKink > VISIBLE_KINK && candidate.largestKink < WORTH * largestKink;
    return candidate.possible && (nearer || fairer) ? { candidate, turned } : undefined;
  }
  return undefined;
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
