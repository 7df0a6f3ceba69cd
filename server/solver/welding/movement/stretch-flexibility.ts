import { placeOn, type Centreline, type Piece } from '../../geometry/centreline.ts';
import { AXES, add, cross, dot, scale, subtract, type Vector3 } from '../../geometry/vector.ts';

/**
 * In what a frame is measured here: lengths from its middle, in its own size, so that turns and moves weigh alike.
 * `thickness` is (i / size)² with the radius of gyration of the tube's section.
 */
export type FrameScale = { readonly middle: Vector3; readonly size: number; readonly thickness: number };

/** Poisson's ratio of austenitic steel; from memory, and the usual one. */
const POISSON = 0.3;

/** Square of the radius of gyration of a tube [mm²]: I/A = (D² + d²)/16. Exact. */
export const gyration = (outsideDiameter: number, wall: number): number =>
  (outsideDiameter ** 2 + Math.max(0, outsideDiameter - 2 * wall) ** 2) / 16;

type GaussPoint = readonly [place: number, weight: number];

/** Gauss and Legendre's points from −1 to 1: two are exact on a straight (a polynomial of second degree). */
const ON_STRAIGHT: readonly GaussPoint[] = [
  [-Math.sqrt(1 / 3), 1],
  [Math.sqrt(1 / 3), 1],
];
/** Five for each part of an arc; Abramowitz and Stegun, table 25.4, from memory. */
const ON_ARC: readonly GaussPoint[] = [
  [-0.906179845938664, 0.2369268850561891],
  [-0.5384693101056831, 0.4786286704993665],
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.4786286704993665],
  [0.906179845938664, 0.2369268850561891],
];
/** No part of an arc turns further [rad]: five points then err by less than a millionth. */
const ARC_PART = Math.PI / 4;

/**
 * How a stretch of tube gives way: the turn and the move of what is beyond it, for a force and a moment through it.
 * Both are taken at the middle of the frame, where they are the same all along the stretch: a twist is (u, ω), a
 * wrench (f, m). Bending and torsion (GJ = EI/(1 + ν) for a tube) and axial strain, with EI = 1; shear is left out.
 *
 *     ω = ∫ A (m − p × f) ds,   u = ∫ p × A (m − p × f) + (i² t·f) t ds,   A = 1 + ν t tᵀ
 *
 * Castigliano's theorem; derived.
 *
 * @param from @param to stations [mm]
 * @returns 6 × 6, row by row, symmetric
 */
export function stretchFlexibility(line: Centreline, from: number, to: number, frame: FrameScale): number[] {
  const sum = new Array<number>(36).fill(0);
  let begin = 0;
  for (const piece of line.pieces) {
    const [low, high] = [Math.max(from, begin) - begin, Math.min(to, begin + piece.length) - begin];
    if (high > low) addPart(sum, piece, { low, high }, frame);
    begin += piece.length;
  }
  for (let row = 0; row < 6; row += 1)
    for (let column = 0; column < row; column += 1) sum[6 * row + column] = sum[6 * column + row] ?? 0;
  return sum;
}

function addPart(
  sum: number[],
  piece: Piece,
  { low, high }: { low: number; high: number },
  { middle, size, thickness }: FrameScale,
): void {
  const parts = piece.kind === 'arc' ? Math.max(1, Math.ceil((high - low) / piece.radius / ARC_PART)) : 1;
  const half = (high - low) / parts / 2;
  for (let part = 0; part < parts; part += 1) {
    for (const [at, weight] of piece.kind === 'arc' ? ON_ARC : ON_STRAIGHT) {
      const { point, tangent } = placeOn(piece, low + half * (2 * part + 1 + at));
      addPlace(sum, scale(subtract(point, middle), 1 / size), tangent, (weight * half) / size, thickness);
    }
  }
}

/** One place of the tube: its columns are what unit forces and unit moments along the axes do there. */
function addPlace(sum: number[], p: Vector3, t: Vector3, weight: number, thickness: number): void {
  const bent = (moment: Vector3): Vector3 => add(moment, scale(t, POISSON * dot(t, moment)));
  for (const [column, axis] of AXES.entries()) {
    const [byForce, byMoment] = [bent(cross(axis, p)), bent(axis)];
    const strained = scale(t, thickness * dot(t, axis));
    addColumn(sum, column, weight, add(cross(p, byForce), strained), byForce);
    addColumn(sum, column + 3, weight, cross(p, byMoment), byMoment);
  }
}

function addColumn(sum: number[], column: number, weight: number, u: Vector3, turn: Vector3): void {
  const values = [u.x, u.y, u.z, turn.x, turn.y, turn.z];
  for (let row = 0; row <= column; row += 1) {
    const at = 6 * row + column;
    sum[at] = (sum[at] ?? 0) + weight * (values[row] ?? 0);
  }
}
