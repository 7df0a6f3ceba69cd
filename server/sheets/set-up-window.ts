import { around } from './ink.ts';
import { largestOfAll, type Scale } from './scale.ts';
import { marksOf, type PlacedMark } from './set-up-marks.ts';
import type { SetUp } from './set-up.ts';
import type { SetUpView } from './set-up-view.ts';
import type { SheetInput } from './sheet-input.ts';

/** Room round the tubes for signs and words [mm on paper]. */
export const MARGIN = { side: 9, top: 10, bottom: 11 } as const;

/** Tube that is drawn past what is filled, in diameters: the half that is its own thickness, and a little. */
const PAST = 0.6;

/** The part of a view that a set-up's picture shows [mm at full size, y up]. */
export type Window = { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number };

/** Where a picture may be drawn [mm]. */
export type Room = { readonly width: number; readonly height: number };

/** Round all the ways of the gas and everything marked; round the tubes where no gas runs. */
function windowOf(one: SetUpView, marks: readonly PlacedMark[], diameter: number): Window {
  const lines = one.gas.length > 0 ? one.gas.map(({ line }) => line) : one.filled.map(({ centreline }) => centreline);
  const points = [...lines.flat(), ...marks.map(({ at }) => at)];
  if (points.length === 0) return { left: 0, bottom: 0, right: 0, top: 0 };
  const { left, top, width, height } = around(points);
  const past = PAST * diameter;
  return { left: left - past, bottom: top - past, right: left + width + past, top: top + height + past };
}

/** The largest scale at which a window fits into a room. */
export const scaleIn = ({ left, bottom, right, top }: Window, room: Room): Scale =>
  largestOfAll(
    (factor) =>
      (right - left) * factor + 2 * MARGIN.side <= room.width &&
      (top - bottom) * factor + MARGIN.top + MARGIN.bottom <= room.height,
  );

/** Height of a picture at a scale [mm]. */
export const pictureHeight = ({ bottom, top }: Window, { factor }: Scale): number =>
  (top - bottom) * factor + MARGIN.top + MARGIN.bottom;

/** A view with everything on it that is marked, and the part of it that is shown. */
export type MarkedView = SetUpView & { readonly marks: readonly PlacedMark[]; readonly window: Window };

export function markedView(setUp: SetUp, one: SetUpView, input: SheetInput): MarkedView {
  const marks = marksOf(setUp, one, input);
  return { ...one, marks, window: windowOf(one, marks, input.job.tube.outsideDiameter) };
}
