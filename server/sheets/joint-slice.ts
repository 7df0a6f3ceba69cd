import { words, wordsOf } from '../language/words.ts';
import { fixed } from '../language/length-format.ts';
import type { Joint, JointFace, TapeMarks } from '../plan/joint.ts';

/** Named generators of a tube, a quarter turn from each to the next. */
const GENERATORS = ['outside', 'top', 'inside', 'bottom'] as const;

/** Below this a face is square: finer than a saw is set [degrees]; common practice, no source. */
export const SQUARE = 0.05;

/** Nearer than this to a named generator it is that one: finer than a mark on a tube [degrees]. */
const ON_IT = 0.5;

const turned = (angle: number): number => ((angle % 360) + 360) % 360;

/** Where a face leaves its tube longest [degrees from the outside]. */
const longestAt = ({ saw }: JointFace): number => 90 * GENERATORS.indexOf(saw.longSide) + saw.fromLongSide;

/** A place round the tube in words: 'top', or 'outside, 12.5° towards top'. */
export function generatorWords(angle: number): string {
  const quarter = Math.round(turned(angle) / 90);
  const off = turned(angle) - 90 * quarter;
  const name = (index: number): string => wordsOf('generator', GENERATORS[((index % 4) + 4) % 4] ?? 'outside');
  if (Math.abs(off) < ON_IT) return name(quarter);
  const degrees = fixed(Math.abs(off), 1);
  return words('sheet.generator-past', { name: name(quarter), degrees, next: name(quarter + Math.sign(off)) });
}

/** Where the tube is left longest at a face, in words; a dash for a square one. */
export const longSideWords = (face: JointFace): string =>
  face.saw.offSquare.value < SQUARE ? '—' : generatorWords(longestAt(face));

/** Stations of the two ends of a face's edge as it is drawn [mm]. */
export type Edge = { readonly upper: number; readonly lower: number };

/** A joint seen square to the plane that its faces lean in; `upper` is the generator that is drawn on top [degrees]. */
export type Slice = { readonly upper: number; readonly a: Edge; readonly b: Edge };

/**
 * Station of a face's edge at an angle round the tube: through the plan's ordinates at the four generators, and between
 * those as a plane goes round a straight tube.
 */
function reach({ station, marks }: JointFace): (angle: number) => number {
  const [outside = 0, top = 0, inside = 0, bottom = 0] = marks.generators.map(({ ordinate }) => ordinate);
  const mean = (outside + top + inside + bottom) / 4;
  const [along, across, twice] = [(outside - inside) / 2, (top - bottom) / 2, (outside + inside - top - bottom) / 4];
  return (angle) => {
    const turn = (angle * Math.PI) / 180;
    return station.value + mean + along * Math.cos(turn) + across * Math.sin(turn) + twice * Math.cos(2 * turn);
  };
}

/** Widths that differ by less than this are alike: finer than a tape reads [mm]. */
const ALIKE = 0.05;

/** Width of what is taken out along each named generator, by the plan's distances from one point; nothing without one. */
function widths({ faceA, faceB }: Joint): number[] {
  const all = (face: JointFace): TapeMarks[] => [face.marks, ...(face.check === null ? [] : [face.check])];
  for (const a of all(faceA)) {
    const b = all(faceB).find(({ from, bend, towards }) => from === a.from && bend === a.bend && towards === a.towards);
    if (b === undefined) continue;
    const sign = a.towards === 'finish' ? 1 : -1;
    return a.generators.map(
      ({ distance }, index) =>
        sign * ((b.generators[index] ?? a.generators[index] ?? { distance }).distance.value - distance.value),
    );
  }
  return [];
}

/** Generator at which most is taken out [degrees]; null where it is as much all round, or the plan does not say. */
function widestAt(joint: Joint): number | null {
  const [outside = 0, top = 0, inside = 0, bottom = 0] = widths(joint);
  const [along, across] = [outside - inside, top - bottom];
  return Math.hypot(along, across) < ALIKE ? null : (Math.atan2(across, along) * 180) / Math.PI;
}

/** The slice of a joint that shows most of its lean, the scrap's long side on top; the outside on top where both are alike. */
export function sliceOf(joint: Joint): Slice {
  const { faceA, faceB } = joint;
  const steeper = faceA.saw.offSquare.value >= faceB.saw.offSquare.value ? faceA : faceB;
  const widest = widestAt(joint);
  const angle = steeper.saw.offSquare.value < SQUARE ? 0 : longestAt(steeper);
  const [a, b] = [reach(faceA), reach(faceB)];
  const up = widest ?? 0;
  const upper = turned(Math.cos(((angle - up) * Math.PI) / 180) > -1e-9 ? angle : angle + 180);
  const edge = (at: (angle: number) => number): Edge => ({ upper: at(upper), lower: at(upper + 180) });
  return { upper, a: edge(a), b: edge(b) };
}

/** Generator of the scrap's long side [degrees]; where nobody can say, that of the slice. */
export const scrapLongAt = (joint: Joint): number => turned(widestAt(joint) ?? sliceOf(joint).upper);
