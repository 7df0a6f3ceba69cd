import type { Tube } from '../../job/tube.ts';
import { LEAST_AXIS_ANGLE, saddleOrdinate } from '../joints/saddle-cut.ts';

type TubeSize = Pick<Tube, 'outsideDiameter' | 'wall'>;

/** How a branch sits: angle between the axes [rad], distance between them [mm]. */
export type Seat = { readonly axisAngle: number; readonly offset: number };

/** A branch, and where it sits on a tube of another outside diameter, that one's [mm]. */
type Branch = TubeSize & { readonly main?: number };

/** Chords round a saddle: within 0.1 % of a fine integral for every seat that a wrap is drawn for; a test holds it. */
const CHORDS = 96;

/** Length of a weld round a tube, in the middle of its wall [mm]: π (D − t). */
export const buttLength = ({ outsideDiameter, wall }: TubeSize): number => Math.PI * (outsideDiameter - wall);

/** Length of a fillet round a tube on a plate, along the tube's surface [mm]: π D. */
export const padLength = ({ outsideDiameter }: TubeSize): number => Math.PI * outsideDiameter;

/**
 * Length of a fillet round a tube that is cut along the plate it stands on [mm], along the tube's surface: the ellipse with
 * the half axes D/2 and D/(2 cos τ), l = D/2 ∮ √(1 + (tan τ sin φ)²) dφ by equal steps.
 *
 * @param tilt between the tube and the way square out of the plate [rad]; 0: square, where it is π D
 */
export function mitreLength({ outsideDiameter }: Pick<TubeSize, 'outsideDiameter'>, tilt: number): number {
  // flatter than any saddle is cut it is no longer than that
  const slant = Math.tan(Math.min(Math.abs(tilt), Math.PI / 2 - LEAST_AXIS_ANGLE));
  const step = (2 * Math.PI) / CHORDS;
  const round = Array.from({ length: CHORDS }, (_, index) => Math.hypot(1, slant * Math.sin((index + 0.5) * step)));
  return (outsideDiameter / 2) * step * round.reduce((sum, one) => sum + one, 0);
}

/**
 * Length of the curve in which the middle of a branch's wall meets the surface of its main [mm], by chords: z(φ) of the
 * saddle's cut with r = (D − t)/2 and R = D/2, of the main where that is another tube. A main that is bent there is taken
 * as straight.
 */
export function saddleLength(
  seat: Seat,
  { outsideDiameter, wall, main = outsideDiameter }: Branch,
  chords = CHORDS,
): number {
  const radius = (outsideDiameter - wall) / 2;
  const mainRadius = main / 2;
  // a saddle too flat for a wrap is no longer than one that just has one
  const axisAngle = Math.max(seat.axisAngle, LEAST_AXIS_ANGLE);
  const { offset } = seat;
  const side = (radius * Math.cos(axisAngle)) / Math.sin(axisAngle);
  const ordinate = (generator: number): number =>
    // a generator that misses the main ends beside its axis
    saddleOrdinate({ radius, mainRadius, offset, axisAngle, generator }) ?? side * Math.cos(generator);
  const chord = 2 * radius * Math.sin(Math.PI / chords);
  let before = ordinate(0);
  let length = 0;
  for (let index = 1; index <= chords; index += 1) {
    const here = ordinate((2 * Math.PI * index) / chords);
    length += Math.hypot(chord, here - before);
    before = here;
  }
  return length;
}
