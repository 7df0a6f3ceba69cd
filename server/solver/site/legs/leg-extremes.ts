import { footStation, headTip, lengthAlong, type LegCut } from './leg-cut.ts';

/** Where something is longest or shortest [rad]. */
export type LegExtremes = {
  /** Where the head reaches furthest, from the saddle's acute side, as in `takesAt`. */
  readonly headTip: number;
  /** Generators on which the leg is shortest and longest, from generator 0. */
  readonly shortest: number;
  readonly longest: number;
  /** Length of the leg in the mean of its generators [mm]. */
  readonly mean: number;
};

/** Generators that are tried first: every 5 degrees, our own choice. */
const TRIED = 72;
const STEP = (2 * Math.PI) / TRIED;

/** Rounding of lengths [mm]: of two generators that are equally long the first counts. */
const EQUAL = 1e-9;

/** @returns undefined where the leg's inner surface misses the tube that it sits on */
export function legExtremes(cut: LegCut): LegExtremes | undefined {
  const acute = cut.head.end === 'saddle' ? cut.head.seat.acute : 0;
  const tips: number[] = [];
  const lengths: number[] = [];
  for (let index = 0; index < TRIED; index += 1) {
    const tip = headTip(cut, index * STEP);
    if (tip === undefined) return undefined;
    tips.push(tip);
    lengths.push(tip - footStation(cut, acute - index * STEP));
  }
  const along = (turned: number): number | undefined => lengthAlong(cut, acute - turned);
  return {
    headTip: longestAt(tips, (turned) => headTip(cut, turned)),
    shortest: acute - longestAt(lengths.map(negative), (turned) => negative(along(turned))),
    longest: acute - longestAt(lengths, along),
    mean: lengths.reduce((sum, one) => sum + one, 0) / TRIED,
  };
}

const negative = (value: number | undefined): number => (value === undefined ? -Infinity : -value);

/** Where a length round the tube is most [rad], from what was tried of it. */
function longestAt(tried: readonly number[], lengthOf: (turned: number) => number | undefined): number {
  let best = { at: 0, value: -Infinity };
  for (const [index, value] of tried.entries()) if (value > best.value + EQUAL) best = { at: index * STEP, value };
  return bestNear(best.at, (turned) => lengthOf(turned) ?? -Infinity);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Rounds after which a smooth length no longer changes, and after which one with a corner does not. */
const SMOOTH = 14;
const CORNERED = 40;

/** Golden section search one step either side, down to where a length no longer changes. */
function bestNear(middle: number, valueAt: (turned: number) => number): number {
  let [low, high] = [middle - STEP, middle + STEP];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [leftValue, rightValue] = [valueAt(left), valueAt(right)];
  for (let round = 0; round < CORNERED; round += 1) {
    if (round >= SMOOTH && Math.abs(leftValue - rightValue) < EQUAL) break;
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
