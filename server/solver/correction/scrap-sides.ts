import { lengthAlong } from '../joints/generators.ts';
import { faceStation, type FacePair } from '../joints/face-wrap.ts';

/** Widths between two faces on the outer surface, where they are widest and narrowest apart [mm], and where [rad]. */
export type ScrapSides = {
  readonly long: number;
  readonly short: number;
  /** Generator of the narrowest width. */
  readonly shortAt: number;
  /** Whether a plane misses a generator, so that the face cannot be cut. */
  readonly missed: boolean;
};

/** Half of the step of the parabola through three widths [rad]. */
const STEP = Math.PI / 36;

/**
 * The long and the short side of what is between two faces. Round the tube the width goes as a cosine and what a bend
 * adds to it: found among 24 generators, then at the top of the parabola through the three beside it.
 *
 * @param radius of the outer surface [mm]
 */
export function scrapSides({ first, second }: FacePair, radius: number): ScrapSides {
  let missed = false;
  const width = (angle: number): number => {
    const [from, to] = [faceStation(first, { radius, angle }), faceStation(second, { radius, angle })];
    if (from !== undefined && to !== undefined) return lengthAlong(first.runs, { radius, angle }, from, to);
    missed = true;
    return second.station - first.station;
  };
  const widths = Array.from({ length: 24 }, (_, index) => width((2 * Math.PI * index) / 24));
  const extreme = (wanted: number): { angle: number; value: number } => {
    const middle = (2 * Math.PI * widths.indexOf(wanted)) / 24;
    const [before, after] = [width(middle - STEP), width(middle + STEP)];
    const bend = before - 2 * wanted + after;
    const angle = Math.abs(bend) < 1e-12 ? middle : middle + (STEP * (before - after)) / (2 * bend);
    return { angle, value: width(angle) };
  };
  const short = extreme(Math.min(...widths));
  return { long: extreme(Math.max(...widths)).value, short: short.value, shortAt: short.angle, missed };
}
