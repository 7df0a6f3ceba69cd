import type { RigidMotion } from '../../geometry/rigid-motion.ts';
import { leastSquares, nearlyLinear, type Unknown } from '../../least-squares.ts';
import type { ClosedSides } from './joint-closing.ts';
import type { LayoutJoint, SpliceProblem } from './splice-problem.ts';
import { derivativesOf, residualsOf } from './splice-residuals.ts';
import { searchOf, stateAt, type State } from './splice-state.ts';

/** Typical sizes of the unknowns [mm, rad, mm]. */
const SIZE_OF = { shift: 1, turn: 1e-3, bend: 1e-2 } as const;
const MIDDLE_SIZE = 10;

/** Steps that tell layouts apart: bodies start near where they end, and what is left is nearly linear. */
const ROUGH_STEPS = 2;
/** Rounds that bring a rough solution to its end. */
const POLISH_ROUNDS = 2;

/** A layout closed: the motion of every body, and the sides and the middle of every joint. */
export type SolvedSplice = {
  readonly problem: SpliceProblem;
  readonly motions: readonly RigidMotion[];
  readonly joints: readonly { readonly joint: LayoutJoint; readonly middle: number; readonly sides: ClosedSides }[];
  /** How far each hinge of the problem was turned [rad]. */
  readonly turns: readonly number[];
  /** Sum of squares of everything, each over what begins to matter. */
  readonly cost: number;
  /** The unknowns where the search ended: a better one may begin there. */
  readonly values: readonly number[];
};

/**
 * Closes a layout so that its targets come as near to where they must be as the cuts allow. Weighed against each other,
 * each over what begins to matter: distance of every target, hi-lo, kink, how far a joint wandered, metal that is not
 * there. Every body is free; the wanted frame holds them.
 *
 * @param how roughly: a few steps, enough to tell layouts apart; else to the end, from the values of a rough solution
 */
export function solveSplice(
  problem: SpliceProblem,
  how: 'roughly' | { readonly from: readonly number[] } | null = null,
): SolvedSplice | undefined {
  const search = searchOf(problem);
  const { freedoms } = search;
  const first = how === null || how === 'roughly' ? [] : how.from;
  const unknowns: Unknown[] = [
    ...freedoms.map(({ kind, hinge }, index): Unknown => {
      const one = { start: first[index] ?? 0, size: SIZE_OF[kind] };
      return hinge === null ? one : { ...one, low: hinge.low, high: hinge.high };
    }),
    ...problem.joints.map(({ place, low, high }, index) => ({
      start: first[freedoms.length + index] ?? place.at,
      size: MIDDLE_SIZE,
      low,
      high,
    })),
  ];
  let last: { values: readonly number[]; state: State } | undefined;
  const at = (values: readonly number[]): State => {
    if (last === undefined || last.values.some((value, index) => value !== values[index]))
      last = { values, state: stateAt(search, values) };
    return last.state;
  };
  const residuals = (given: readonly number[]) => residualsOf(search, at(given), given);
  const derivatives = (given: readonly number[]) => derivativesOf(search, at(given));
  const { values, cost } =
    how === 'roughly'
      ? nearlyLinear(unknowns, residuals, derivatives, ROUGH_STEPS)
      : leastSquares(unknowns, residuals, derivatives, how === null ? undefined : POLISH_ROUNDS);
  const { motions, middles, sides } = at(values);
  const joints = problem.joints.flatMap((joint, index) => {
    const own = sides[index];
    return own === undefined ? [] : [{ joint, middle: middles[index] ?? 0, sides: own }];
  });
  const turns = problem.hinges.map(({ hinge }) => {
    const column = freedoms.findIndex((one) => one.hinge === hinge);
    return column < 0 ? 0 : (values[column] ?? 0);
  });
  return joints.length < problem.joints.length ? undefined : { problem, motions, joints, turns, cost, values };
}
