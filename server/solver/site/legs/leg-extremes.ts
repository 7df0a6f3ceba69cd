import { headTip, lengthAlong, type LegCut } from './leg-cut.ts';

/** Where something is longest or shortest [rad]. */
export type LegExtremes = {
  /** Where the head reaches furthest, from the saddle's acute side, as in `takesAt`. */
  readonly headTip: number;
  /** Generators on which the leg is shortest and longest, from generator 0. */
  readonly shortest: number;
  readonly longest: number;
};

/** Generators that are tried first: every 5 degrees. */
const TRIED = 72;
const STEP = (2 * Math.PI) / TRIED;

/** Rounding of lengths [mm]: of two generators that are equally long the first counts. */
const EQUAL = 1e-9;

/** @returns undefined where the leg's inner surface misses the tube that it sits on */
export function legExtremes(cut: LegCut): LegExtremes | undefined {
  const tip = longestAt((turned) => headTip(cut, turned));
  const shortest = longestAt((generator) => negative(lengthAlong(cut, generator)));
  const longest = longestAt((generator) => lengthAlong(cut, generator));
  return tip === undefined || shortest === undefined || longest === undefined
    ? undefined
    : { headTip: tip, shortest, longest };
}

const negative = (value: number | undefined): number | undefined => (value === undefined ? undefined : -value);

/** Where a length round the tube is most [rad]; undefined where it is not known all round. */
function longestAt(lengthOf: (generator: number) => number | undefined): number | undefined {
  let best = { at: 0, value: -Infinity };
  for (let index = 0; index < TRIED; index += 1) {
    const value = lengthOf(index * STEP);
    if (value === undefined) return undefined;
    if (value > best.value + EQUAL) best = { at: index * STEP, value };
  }
  return bestNear(best.at, (generator) => lengthOf(generator) ?? -Infinity);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Golden section search one step either side, down to where a length no longer changes. */
function bestNear(middle: number, valueAt: (generator: number) => number): number {
  let [low, high] = [middle - STEP, middle + STEP];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [leftValue, rightValue] = [valueAt(left), valueAt(right)];
  // 0.618⁴⁰ of 10 degrees
  for (let round = 0; round < 40; round += 1) {
    if (leftValue >= rightValue) {
      [high, right, rightValue] = [right, left, leftValue];
      left = high - GOLDEN * (high - low);
      leftValue = valueAt(left);
    } else {
      [low, left, leftValue] = [left, right, rightValue];
      right = low + GOLDEN * (high - low);
      rightValue = valueAt(right);
    }
  }
  const found = (low + high) / 2;
  // where it is the same all round, the first generator stays
  return valueAt(found) > valueAt(middle) + EQUAL ? found : middle;
}
