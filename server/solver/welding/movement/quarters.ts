import type { WeldTurn } from '../../../job/welding.ts';
import { add, dot, scale, type Vector3 } from '../../geometry/vector.ts';

/** How the quarters of a weld follow each other: the one that is welded first, and the way from there. */
export type Sequence = Pick<WeldTurn, 'first' | 'way'>;

/** Towards where a weld pulls, and how much: along the outside generator and along the top one. */
export type Pulling = { readonly outside: number; readonly top: number };

const FIRSTS = [1, 2, 3, 4] as const;

const STEPS = {
  opposed: [0, 2, 1, 3],
  'opposed-back': [0, 2, 3, 1],
  round: [0, 1, 2, 3],
  'round-back': [0, 3, 2, 1],
} as const;

/** The quarters of a sequence in turn. 1 lies from the outside generator on to the top one, and so on round. */
export const quartersOf = ({ first, way }: Sequence): number[] =>
  STEPS[way].map((step) => ((first - 1 + step) % 4) + 1);

/**
 * How much a quarter pulls by its turn, growing evenly: the last one pulls the tube over, the first one pulls the other
 * way. Our own choice.
 */
const WEIGHTS = [-1.5, -0.5, 0.5, 1.5] as const;

/** The middle of a quarter lies as far round from one generator as from the next. */
const middleOf = (quarter: number): Pulling => ({
  outside: quarter === 1 || quarter === 4 ? 1 : -1,
  top: quarter <= 2 ? 1 : -1,
});

/**
 * Where the quarters of a weld pull together, as a share of what a weld pulls that is made once round: the weighted
 * sum of their directions, which is 4 then. It lies along a generator, and is half for opposed quarters. Derived.
 *
 * @param quarters in the order in which they are welded
 */
export function pullOf(quarters: readonly number[]): Pulling {
  let [outside, top] = [0, 0];
  for (const [turn, quarter] of quarters.entries()) {
    const middle = middleOf(quarter);
    const weight = WEIGHTS[turn] ?? 0;
    outside += (weight * middle.outside) / 4;
    top += (weight * middle.top) / 4;
  }
  return { outside, top };
}

/** One of the four ways that a weld can pull: along a generator, and the sequence that does it. */
export type Choice = Pulling & { readonly sequence: Sequence };

/** Heights that differ by less are the same, as a share of the tube's radius; rounding. */
const SAME_HEIGHT = 1e-9;

/**
 * The four pulls that a weld can have; of the two sequences that give the same, the one that begins lower, because one
 * welds upwards (common practice, no source). Those that begin lowest come first.
 *
 * @param kind with opposed quarters, or once round
 * @param generators directions of the outside one and of the top one
 * @param up away from the ground as the frame is held
 */
export function choicesOf(
  kind: 'opposed' | 'round',
  generators: { readonly outside: Vector3; readonly top: Vector3 },
  up: Vector3,
): Choice[] {
  const heightOf = (quarter: number): number => {
    const { outside, top } = middleOf(quarter);
    const height = dot(add(scale(generators.outside, outside), scale(generators.top, top)), up);
    return Math.round(height / SAME_HEIGHT);
  };
  const ways = kind === 'opposed' ? (['opposed', 'opposed-back'] as const) : (['round', 'round-back'] as const);
  const sequences = ways
    .flatMap((way) => FIRSTS.map((first): Sequence => ({ first, way })))
    .sort((a, b) => heightOf(a.first) - heightOf(b.first) || a.first - b.first);
  const choices: Choice[] = [];
  for (const sequence of sequences) {
    const { outside, top } = pullOf(quartersOf(sequence));
    if (choices.some((one) => one.outside === outside && one.top === top)) continue;
    choices.push({ sequence, outside, top });
  }
  return choices;
}
