import { RADIANS } from '../../geometry/angle.ts';
import { composed, inverted, moved, turnOf } from '../../geometry/rigid-motion.ts';
import { clearOf } from '../../geometry/solid.ts';
import { add, cross, dot, length, scale, subtract, unit, AXES, ORIGIN, type Vector3 } from '../../geometry/vector.ts';
import { letInRadius, type ClosedSides } from './joint-closing.ts';
import { VISIBLE_KINK } from '../weld-limits.ts';
import { axesOf, type SpliceProblem } from './splice-problem.ts';
import type { Search, State } from './splice-state.ts';

/** What each residual is divided by. */
const HI_LO_SCALE = 0.02; // [mm] common practice, no source: a fingernail finds less than a tenth of a millimetre
const KINK_SCALE = VISIBLE_KINK;
const PLACE_SCALE = 20; // [mm] a joint may wander this far before it counts as much as one tape; our own choice
const METAL_SCALE = 0.05; // [mm] metal that is not there; our own choice: nearly forbidden

/** Room that a post does not have [mm]: nearly forbidden; and what is kept beyond it, so that it is really there. Our own choice. */
const POST_SCALE = 0.1;
const POST_MARGIN = 0.1;

/** A joint is not turned about its tube for nothing [rad]; so weak that a turn that is wanted stays; our own choice. */
const TWIST_SCALE = 1;

/** Motions beyond this are not what a splice does, and keep an open search in sight [mm, rad]; our own choice. */
const FAR = 1000;
const FAR_TURN = 1;

/** A bend that is turned for nothing is a trip to the bender for nothing [rad]: 2 degrees weigh as much as one tape; our own choice. */
const BEND_SCALE = 2 * RADIANS;

const FAR_OF = { shift: FAR, turn: FAR_TURN, bend: BEND_SCALE } as const;

/** What must be taken out at the least between the centrelines that meet: a saw cut, and a wedge's own width [mm]. */
const leastRemoved = ({ kerf, gap, shrinkage, outsideDiameter }: SpliceProblem['sizes'], kink: number): number =>
  Math.max(kerf, outsideDiameter * Math.tan(kink / 2)) - gap + shrinkage;

/** How the metal that a wedge wants grows with its kink: scalar product with the change of the kink [mm]. */
function wedgeGrowth({ kerf, outsideDiameter }: SpliceProblem['sizes'], kink: Vector3): Vector3 {
  const angle = length(kink);
  const isWedge = outsideDiameter * Math.tan(angle / 2) > kerf;
  return isWedge ? scale(kink, outsideDiameter / 2 / Math.cos(angle / 2) ** 2 / angle) : ORIGIN;
}

/** How the ends of curved new tube lean as it grows longer by one [1/mm]: nothing where it is straight. */
function archOf({ a, letIn }: ClosedSides, chord: Vector3): { atA: Vector3; atB: Vector3 } {
  const radius = letIn === null ? null : letInRadius(a);
  const axis = letIn === null ? undefined : unit(cross(letIn.atA, letIn.atB));
  if (radius === null || letIn === null || axis === undefined) return { atA: ORIGIN, atB: ORIGIN };
  // half the angle is asin(chord / 2R): it grows by 1 / (2R cos)
  const growth = 1 / (2 * radius * dot(chord, letIn.atA));
  return { atA: scale(cross(axis, letIn.atA), -growth), atB: scale(cross(axis, letIn.atB), growth) };
}

/** What of a vector counts: all of it, or what is square to a direction. */
const across = (a: Vector3, along: Vector3 | null): Vector3 =>
  along === null ? a : subtract(a, scale(along, dot(a, along)));

/** Directions square to a joint that count: in a plane only the one that lies in it. */
const squareOf = ({ square }: ClosedSides, inPlane: boolean): readonly Vector3[] => (inPlane ? [square[1]] : square);

/** Everything that a splice weighs, each over what begins to matter, in the order of derivativesOf. */
export function residualsOf({ problem, freedoms }: Search, state: State, values: readonly number[]) {
  const { planeNormal, sizes } = problem;
  const inPlane = planeNormal !== null;
  const rows: number[] = [];
  const axes = planeNormal === null ? AXES : axesOf(planeNormal);
  for (const { body, point, wanted, weight, target } of problem.targets) {
    const motion = state.motions[body];
    const off = across(motion === undefined ? ORIGIN : subtract(moved(motion, point), wanted), target.along);
    for (const axis of axes) rows.push(dot(off, axis) * weight);
  }
  for (const [index, { place, bodyA, bodyB }] of problem.joints.entries()) {
    const sides = state.sides[index];
    if (sides === undefined) continue;
    const { a, b, gap, half, letIn } = sides;
    const kink = subtract(b.tangent, a.tangent);
    for (const square of squareOf(sides, inPlane)) {
      if (letIn === null) rows.push(dot(gap, square) / HI_LO_SCALE, dot(kink, square) / KINK_SCALE);
      else
        rows.push(
          dot(subtract(letIn.atA, a.tangent), square) / KINK_SCALE,
          dot(subtract(b.tangent, letIn.atB), square) / KINK_SCALE,
        );
    }
    const missing = letIn === null ? leastRemoved(sizes, length(kink)) - 2 * half : 0;
    rows.push(((state.middles[index] ?? 0) - place.at) / PLACE_SCALE, Math.max(0, missing) / METAL_SCALE);
    const [motionA, motionB] = [state.motions[bodyA], state.motions[bodyB]];
    if (!inPlane && motionA !== undefined && motionB !== undefined)
      rows.push(dot(turnOf(composed(motionB, inverted(motionA))), sides.along) / TWIST_SCALE);
  }
  for (const { body, point, post } of problem.keepAways) {
    const motion = state.motions[body];
    const away = clearOf(post.solid, motion === undefined ? point : moved(motion, point)).distance;
    rows.push(Math.max(0, post.keep + POST_MARGIN - away) / POST_SCALE);
  }
  for (const [column, { kind }] of freedoms.entries()) rows.push((values[column] ?? 0) / FAR_OF[kind]);
  return rows;
}

/**
 * First derivatives of the residuals: a row for each, a column for each unknown. Left out, since nothing of it is left
 * where a joint is closed: that the two directions square to a joint turn with the tube (the pair turns, its size does
 * not), that its faces follow a little otherwise while there is hi-lo, and that the plane of curved new tube leans.
 */
export function derivativesOf({ problem, freedoms }: Search, state: State): number[][] {
  const { planeNormal, sizes, joints } = problem;
  const inPlane = planeNormal !== null;
  const count = freedoms.length + joints.length;
  const axes = planeNormal === null ? AXES : axesOf(planeNormal);
  const rows: number[][] = [];
  const empty = () => new Array<number>(count).fill(0);
  const ofBody = problem.starts.map((_, body) =>
    freedoms.flatMap((one, column) => (one.bodies[body] === true ? [column] : [])),
  );
  const velocity = (column: number, at: Vector3): Vector3 =>
    add(
      cross(state.spins[column] ?? ORIGIN, subtract(at, state.pivots[column] ?? ORIGIN)),
      state.slides[column] ?? ORIGIN,
    );
  const spun = (column: number, direction: Vector3): Vector3 => cross(state.spins[column] ?? ORIGIN, direction);
  for (const { body, point, weight, target } of problem.targets) {
    const motion = state.motions[body];
    const at = motion === undefined ? point : moved(motion, point);
    const own = (ofBody[body] ?? []).map((column) => ({ column, moves: across(velocity(column, at), target.along) }));
    for (const axis of axes) {
      const row = empty();
      for (const { column, moves } of own) row[column] = dot(moves, axis) * weight;
      rows.push(row);
    }
  }
  for (const [index, { bodyA, bodyB }] of joints.entries()) {
    const sides = state.sides[index];
    if (sides === undefined) continue;
    const { a, b, gap, half, letIn } = sides;
    const both = add(a.tangent, b.tangent);
    const bends = add(a.bend, b.bend);
    const size = dot(both, both);
    /** What one unknown does: to the gap, and to the tangents of both sides. */
    const effects: { column: number; gap: Vector3; atA: Vector3; atB: Vector3 }[] = [];
    for (const [column, { bodies }] of freedoms.entries()) {
      const [onA, onB] = [bodies[bodyA] === true, bodies[bodyB] === true];
      if (!onA && !onB) continue;
      effects.push({
        column,
        gap: subtract(onB ? velocity(column, b.point) : ORIGIN, onA ? velocity(column, a.point) : ORIGIN),
        atA: onA ? spun(column, a.tangent) : ORIGIN,
        atB: onB ? spun(column, b.tangent) : ORIGIN,
      });
    }
    const middle = freedoms.length + index;
    effects.push({ column: middle, gap: subtract(b.tangent, a.tangent), atA: a.bend, atB: b.bend });
    const reach = length(gap);
    const chord = scale(gap, 1 / (reach > 0 ? reach : 1));
    const kink = subtract(b.tangent, a.tangent);
    const missing = letIn === null && leastRemoved(sizes, length(kink)) - 2 * half > 0;
    const metal = empty();
    if (missing) {
      const wider = wedgeGrowth(sizes, kink);
      for (const { column, gap: opens, atA, atB } of effects) {
        const half = -dot(opens, both) / size;
        metal[column] = (dot(wider, add(subtract(atB, atA), scale(bends, half))) - 2 * half) / METAL_SCALE;
      }
    }
    const arch = archOf(sides, chord);
    for (const square of squareOf(sides, inPlane)) {
      const [first, second] = [empty(), empty()];
      for (const effect of effects) {
        if (letIn === null) {
          // the faces follow along the tube: half changes by −(δgap · both) / |both|²
          const half = -dot(effect.gap, both) / size;
          first[effect.column] = dot(effect.gap, square) / HI_LO_SCALE;
          second[effect.column] =
            (dot(subtract(effect.atB, effect.atA), square) + half * dot(bends, square)) / KINK_SCALE;
        } else {
          const longer = dot(chord, effect.gap);
          const turns = scale(subtract(effect.gap, scale(chord, longer)), 1 / (reach > 0 ? reach : 1));
          const [leanA, leanB] = [scale(arch.atA, longer), scale(arch.atB, longer)];
          first[effect.column] = dot(subtract(add(turns, leanA), effect.atA), square) / KINK_SCALE;
          second[effect.column] = dot(subtract(effect.atB, add(turns, leanB)), square) / KINK_SCALE;
        }
      }
      rows.push(first, second);
    }
    const wander = empty();
    wander[middle] = 1 / PLACE_SCALE;
    rows.push(wander, metal);
    if (!inPlane) {
      const twist = empty();
      for (const [column, { bodies }] of freedoms.entries()) {
        const side = (bodies[bodyB] === true ? 1 : 0) - (bodies[bodyA] === true ? 1 : 0);
        if (side !== 0) twist[column] = (side * dot(state.spins[column] ?? ORIGIN, sides.along)) / TWIST_SCALE;
      }
      rows.push(twist);
    }
  }
  for (const { body, point, post } of problem.keepAways) {
    const row = empty();
    const motion = state.motions[body];
    const at = motion === undefined ? point : moved(motion, point);
    const { distance, out } = clearOf(post.solid, at);
    if (distance < post.keep + POST_MARGIN)
      for (const column of ofBody[body] ?? []) row[column] = -dot(velocity(column, at), out) / POST_SCALE;
    rows.push(row);
  }
  for (const [column, { kind }] of freedoms.entries()) {
    const row = empty();
    row[column] = 1 / FAR_OF[kind];
    rows.push(row);
  }
  return rows;
}
