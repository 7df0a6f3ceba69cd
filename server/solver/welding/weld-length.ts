import type { Tube } from '../../job/tube.ts';
import { LEAST_AXIS_ANGLE, saddleOrdinate } from '../joints/saddle-cut.ts';

type TubeSize = Pick<Tube, 'outsideDiameter' | 'wall'>;

/** How a branch sits: angle between the axes [rad], distance between them [mm]. */
export type Seat = { readonly axisAngle: number; readonly offset: number };

/** Chords round a saddle: within 0.1 % of a fine integral for every seat that a wrap is drawn for; a test holds it. */
const CHORDS = 96;

/** Length of a weld round a tube, in the middle of its wall [mm]: π (D − t). */
export const buttLength = ({ outsideDiameter, wall }: TubeSize): number => Math.PI * (outsideDiameter - wall);

/** Length of a fillet round a tube on a plate, along the tube's surface [mm]: π D. */
export const padLength = ({ outsideDiameter }: TubeSize): number => Math.PI * outsideDiameter;

/**
 * Length of the curve in which the middle of a branch's wall meets the surface of a main of the same tube [mm], by
 * chords: z(φ) of the saddle's cut with r = (D − t)/2 and R = D/2. A main that is bent there is taken as straight.
 */
export function saddleLength(seat: Seat, { outsideDiameter, wall }: TubeSize, chords = CHORDS): number {
  const radius = (outsideDiameter - wall) / 2;
  const mainRadius = outsideDiameter / 2;
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
