import type { OrderedWeld } from '../../../plan/welding.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import { balancedPulls } from './balanced-pulls.ts';
import type { PlacedWeld } from './placed-welds.ts';
import { choicesOf, quartersOf, type Choice } from './quarters.ts';
import type { FrameInfluences, WeldInfluence } from './weld-influences.ts';

/**
 * How much a mm of an end, a corner or a weld that stands off counts beside a mm of a size, squared: sizes cannot tell
 * a frame that is pulled out of flat. A quarter, because a frame springs flat where it is fastened; our own choice.
 */
const SHAPE_WEIGHT = 1 / 4;

/** What a turn of a weld does, as the squares of it are summed. */
export const weighed = (sizes: readonly number[], off: readonly number[]): number[] => [
  ...sizes,
  ...off.map((value) => Math.sqrt(SHAPE_WEIGHT) * value),
];

/** Welds in sequence, each with opposed quarters, so that their pulls take each other up as far as they can. */
export function balancedOrder(sequence: readonly PlacedWeld[], { welds }: FrameInfluences, up: Vector3): OrderedWeld[] {
  const moving = sequence.flatMap((weld) => {
    const influence = welds.find((one) => one.weld === weld);
    return influence === undefined ? [] : [{ influence, choices: choicesOf('opposed', weld, up) }];
  });
  const chosen = balancedPulls(
    moving.map(({ influence, choices }) => ({
      choices,
      outside: weighed(influence.outside, influence.outsideOff),
      top: weighed(influence.top, influence.topOff),
    })),
  );
  return sequence.map((weld) => {
    const index = moving.findIndex(({ influence }) => influence.weld === weld);
    return ordered(weld, moving[index]?.choices[chosen[index] ?? 0] ?? choicesOf('opposed', weld, up)[0]);
  });
}

/**
 * Every weld once round, so that one size moves as far as any can. Exact: each weld adds to a size by itself, so the
 * worst of a size is the sum of the most that each can do.
 */
export function worstOrder(
  sequence: readonly PlacedWeld[],
  { checks, welds }: FrameInfluences,
  up: Vector3,
): OrderedWeld[] {
  const most = ({ outside, top }: WeldInfluence, check: number): number =>
    Math.max(Math.abs(outside[check] ?? 0), Math.abs(top[check] ?? 0));
  let worst = { check: 0, sum: 0 };
  for (const check of checks.keys()) {
    const sum = welds.reduce((total, one) => total + most(one, check), 0);
    if (sum > worst.sum * (1 + SAME)) worst = { check, sum };
  }
  return sequence.map((weld) => {
    const choices = choicesOf('round', weld, up);
    const influence = welds.find((one) => one.weld === weld);
    const does = ({ outside, top }: Choice): number =>
      outside * (influence?.outside[worst.check] ?? 0) + top * (influence?.top[worst.check] ?? 0);
    let [chosen] = choices;
    for (const choice of choices)
      if (chosen !== undefined && does(choice) > does(chosen) + SAME * worst.sum) chosen = choice;
    return ordered(weld, chosen);
  });
}

/** Shares that differ by less are the same; rounding. */
const SAME = 1e-9;

const ordered = ({ name }: PlacedWeld, choice: Choice | undefined): OrderedWeld => ({
  weld: name,
  quarters: quartersOf(choice?.sequence ?? { first: 1, way: 'opposed' }),
});
