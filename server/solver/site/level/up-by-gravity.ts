import { add, cross, dot, scale, squareTo, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import { AHEAD, UPRIGHT } from '../structure-axes.ts';
import { saidOfUp, type LevelEquation } from './level-equations.ts';

/**
 * Up by gravity from readings that tell it: exact where they say just two things, else by least squares, each residual
 * over its accuracy.
 *
 * @returns a unit vector in the structure's axes; undefined where two readings cannot both be
 */
export const upByGravity = (equations: readonly LevelEquation[]): Vector3 | undefined =>
  saidOfUp(equations) === 2 ? upFromTwo(equations) : upByLeastSquares(equations);

/** Measured less what up makes of it [rad or mm]. */
export const residualOf = ({ kind, lever, measured }: LevelEquation, up: Vector3): number =>
  measured - (kind === 'incline' ? Math.asin(Math.min(Math.max(dot(lever, up), -1), 1)) : dot(lever, up));

/**
 * a · u = α and b · u = β with |u| = 1: u lies in their plane as both say, and out of it by what is left of its length.
 * Of the two that fit the one nearer to the structure's upright. For inclines p along x and r along y this is
 * u = (sin p, sin r, √(1 − sin²p − sin²r)).
 */
function upFromTwo(equations: readonly LevelEquation[]): Vector3 | undefined {
  const [one, other] = said(equations);
  if (one === undefined || other === undefined) return undefined;
  const normal = cross(one.lever, other.lever);
  const square = dot(normal, normal);
  if (square === 0) return undefined;
  const inPlane = scale(
    add(scale(cross(other.lever, normal), one.part), scale(cross(normal, one.lever), other.part)),
    1 / square,
  );
  const left = 1 - dot(inPlane, inPlane);
  if (left < 0) return undefined;
  const out = Math.sqrt(left / square);
  return unit(add(inPlane, scale(normal, normal.z < 0 ? -out : out)));
}

/** What is said of up, lever · u = part, with levers of length 1; heights against the first of them. */
function said(equations: readonly LevelEquation[]): { lever: Vector3; part: number }[] {
  const [first, ...others] = equations.filter(({ kind }) => kind === 'height');
  const inclines = equations
    .filter(({ kind }) => kind === 'incline')
    .map(({ lever, measured }) => ({ lever, part: Math.sin(measured) }));
  if (first === undefined) return inclines;
  const rises = others.flatMap(({ lever, measured }) => {
    const between = subtract(lever, first.lever);
    const direction = unit(between);
    if (direction === undefined) return [];
    return [{ lever: direction, part: (measured - first.measured) / dot(between, direction) }];
  });
  return [...inclines, ...rises];
}

/** Steps of the search, and how often one that makes things worse is halved: far more than it takes, our own choice. */
const MOST_STEPS = 40;
const MOST_HALVINGS = 20;
/** Below the first [rad] a step is taken without asking, below the second the search is done: both are rounding. */
const SMALL = 1e-6;
const DONE = 1e-15;

/**
 * Gauss and Newton on the two freedoms of a unit vector, from the structure's upright: its first step is the linear
 * solution for small angles.
 */
function upByLeastSquares(equations: readonly LevelEquation[]): Vector3 {
  let up = UPRIGHT;
  let cost = costOf(equations, up);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const change = stepFrom(equations, up);
    if (change === undefined) break;
    let share = 1;
    let next = turnedBy(up, change);
    let then = costOf(equations, next);
    const size = Math.sqrt(dot(change, change));
    // so near the end the sum of squares no longer tells better from worse
    if (size > SMALL) {
      for (let halving = 0; !(then < cost) && halving < MOST_HALVINGS; halving += 1) {
        share /= 2;
        next = turnedBy(up, scale(change, share));
        then = costOf(equations, next);
      }
      if (!(then < cost)) break;
    }
    [up, cost] = [next, then];
    if (size < DONE) break;
  }
  return up;
}

const turnedBy = (up: Vector3, change: Vector3): Vector3 => unit(add(up, change)) ?? up;

function costOf(equations: readonly LevelEquation[], up: Vector3): number {
  let sum = 0;
  for (const equation of equations) sum += (residualOf(equation, up) / equation.accuracy) ** 2;
  return sum;
}

/** Slope of arcsin near its ends is bounded by this cosine; our own choice, a level is never laid so steep. */
const LEAST_COSINE = 1e-3;

/** The change of up, square to it, that the linearised equations ask for; by Gram and Schmidt on two columns. */
function stepFrom(equations: readonly LevelEquation[], up: Vector3): Vector3 | undefined {
  const first = squareTo(up, AHEAD);
  const second = cross(up, first);
  const rows = equations.map((equation) => {
    const { kind, lever, accuracy } = equation;
    const cosine = kind === 'incline' ? Math.sqrt(Math.max(1 - dot(lever, up) ** 2, LEAST_COSINE ** 2)) : 1;
    const weight = 1 / (accuracy * cosine);
    return {
      a: dot(lever, first) * weight,
      b: dot(lever, second) * weight,
      residual: residualOf(equation, up) / accuracy,
    };
  });
  const sum = (of: (row: (typeof rows)[number]) => number): number => rows.reduce((total, row) => total + of(row), 0);
  const aa = sum(({ a }) => a * a);
  if (aa === 0) return undefined;
  const share = sum(({ a, b }) => a * b) / aa;
  const bb = sum(({ a, b }) => (b - share * a) ** 2);
  if (bb === 0) return undefined;
  const alongSecond = sum(({ a, b, residual }) => (b - share * a) * residual) / bb;
  const alongFirst = sum(({ a, residual }) => a * residual) / aa - share * alongSecond;
  return add(scale(first, alongFirst), scale(second, alongSecond));
}
