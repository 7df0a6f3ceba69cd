import {
  composed,
  inverted,
  moved,
  turnAbout,
  turned,
  UNMOVED,
  type RigidMotion,
} from '../../geometry/rigid-motion.ts';
import { add, cross, scale, AXES, ORIGIN, type Vector3 } from '../../geometry/vector.ts';
import { hingeAxis, hingeMotion, type Hinge } from './hinges.ts';
import { closeSides, type ClosedSides } from './joint-closing.ts';
import { axesOf, type SpliceProblem } from './splice-problem.ts';

/** One unknown of the bodies: a shift along a direction, a turn about it, or a bend that is turned. */
export type Freedom = {
  readonly kind: 'shift' | 'turn' | 'bend';
  /** Bodies that go with it. */
  readonly bodies: readonly boolean[];
  /** The body it belongs to; for a bend the one that it is fixed to. */
  readonly body: number;
  readonly axis: Vector3;
  readonly hinge: Hinge | null;
  /** False where the hinge is met from behind: then what lies before it moves. */
  readonly forward: boolean;
};

/** Everything that stays the same while a problem is solved. */
export type Search = {
  readonly problem: SpliceProblem;
  readonly freedoms: readonly Freedom[];
  readonly order: readonly Link[];
};

/** A body that hangs on another by a hinge, in an order in which the other comes first. */
type Link = { readonly from: number; readonly to: number; readonly column: number };

/** The unknowns of a problem: bodies that hang on others by a hinge have the hinge's turn alone. */
export function searchOf(problem: SpliceProblem): Search {
  const { starts, planeNormal, hinges } = problem;
  const shifts = planeNormal === null ? AXES : axesOf(planeNormal);
  const turns = planeNormal === null ? AXES : [planeNormal];
  const roots = starts.map((_, body) => body);
  const links: { from: number; to: number; hinge: number; forward: boolean }[] = [];
  // bodies that hinges join have one root: the first of them; the others follow it, hinge by hinge
  for (let root = 0; root < starts.length; root += 1) {
    if (roots[root] !== root) continue;
    const reached = [root];
    for (let at = 0; at < reached.length; at += 1) {
      const from = reached[at] ?? root;
      for (const [hinge, { bodyA, bodyB }] of hinges.entries()) {
        const to = bodyA === from ? bodyB : bodyB === from ? bodyA : from;
        if (to === from || reached.includes(to)) continue;
        links.push({ from, to, hinge, forward: bodyA === from });
        roots[to] = root;
        reached.push(to);
      }
    }
  }
  const freedoms: Freedom[] = starts.flatMap((_, body): Freedom[] => {
    if (roots[body] !== body) return [];
    const bodies = roots.map((root) => root === body);
    const free = { bodies, body, hinge: null, forward: true };
    return [
      ...shifts.map((axis) => ({ ...free, kind: 'shift' as const, axis })),
      ...turns.map((axis) => ({ ...free, kind: 'turn' as const, axis })),
    ];
  });
  const order = links.map(({ from, to, hinge, forward }): Link => {
    const bodies = starts.map(() => false);
    bodies[to] = true;
    for (const link of links) if (bodies[link.from] === true) bodies[link.to] = true;
    const own = hinges[hinge]?.hinge ?? null;
    freedoms.push({ kind: 'bend', bodies, body: from, axis: ORIGIN, hinge: own, forward });
    return { from, to, column: freedoms.length - 1 };
  });
  return { problem, freedoms, order };
}

/** Everything at one set of values. */
export type State = {
  readonly motions: readonly RigidMotion[];
  /** For each freedom: a point moves by spin × (point − pivot) + slide for one unit of it. */
  readonly spins: readonly Vector3[];
  readonly pivots: readonly Vector3[];
  readonly slides: readonly Vector3[];
  readonly middles: readonly number[];
  readonly sides: readonly (ClosedSides | undefined)[];
};

/** Where everything is at the values of the unknowns: freedoms first, then the middles of the joints. */
export function stateAt({ problem, freedoms, order }: Search, values: readonly number[]): State {
  const shifts = problem.starts.map(() => ORIGIN);
  const turns = problem.starts.map(() => ORIGIN);
  for (const [column, { body, kind, axis }] of freedoms.entries()) {
    if (kind === 'bend') continue;
    const list = kind === 'turn' ? turns : shifts;
    list[body] = add(list[body] ?? ORIGIN, scale(axis, values[column] ?? 0));
  }
  const motions = problem.starts.map((start, body) =>
    composed(turnAbout(problem.centres[body] ?? ORIGIN, turns[body] ?? ORIGIN, shifts[body] ?? ORIGIN), start),
  );
  for (const { from, to, column } of order) {
    const { hinge = null, forward = true } = freedoms[column] ?? {};
    if (hinge === null) continue;
    const bend = hingeMotion(hinge, values[column] ?? 0);
    motions[to] = composed(motions[from] ?? UNMOVED, forward ? bend : inverted(bend));
  }
  const spins: Vector3[] = [];
  const pivots: Vector3[] = [];
  const slides: Vector3[] = [];
  for (const [column, { kind, body, axis, hinge, forward }] of freedoms.entries()) {
    if (hinge === null) {
      spins.push(kind === 'turn' ? spinOf(turns[body] ?? ORIGIN, axis) : ORIGIN);
      pivots.push(add(problem.centres[body] ?? ORIGIN, shifts[body] ?? ORIGIN));
      slides.push(kind === 'shift' ? axis : ORIGIN);
      continue;
    }
    // before: p = T (Rot(δ) (q − R δ t)), so dp/dδ = n × (p − c) − R t; behind, the other way round
    const turn = values[column] ?? 0;
    const held = motions[body] ?? UNMOVED;
    const own = hingeAxis(hinge);
    const { radius } = hinge.arc;
    const end = forward ? turned(composed(held, hingeMotion(hinge, turn)), own.end) : turned(held, own.end);
    const spin = turned(held, own.axis);
    const centre = moved(held, own.centre);
    spins.push(forward ? spin : scale(spin, -1));
    pivots.push(forward ? centre : add(centre, scale(end, radius * turn)));
    slides.push(scale(end, forward ? -radius : radius));
  }
  const middles = problem.joints.map((_, index) => values[freedoms.length + index] ?? 0);
  const sides = problem.joints.map(({ line, takenOut, bodyA, bodyB }, index) => {
    const [a, b] = [motions[bodyA], motions[bodyB]];
    return a === undefined || b === undefined
      ? undefined
      : closeSides({ line, middle: middles[index] ?? 0, takenOut }, a, b, problem.planeNormal);
  });
  return { motions, spins, pivots, slides, middles, sides };
}

/**
 * What a body that is turned by a rotation vector spins about as the vector grows along an axis: that axis itself where
 * both are the same (the left Jacobian of the rotation group; Barfoot 2017, State Estimation for Robotics, 7.1.3, from
 * memory; held by differences).
 */
function spinOf(turn: Vector3, axis: Vector3): Vector3 {
  const first = cross(turn, axis);
  const angle = Math.hypot(turn.x, turn.y, turn.z);
  if (angle < SMALL_TURN) return add(axis, scale(first, 1 / 2));
  const second = cross(turn, first);
  const [one, two] = [(1 - Math.cos(angle)) / angle ** 2, (angle - Math.sin(angle)) / angle ** 3];
  return add(axis, add(scale(first, one), scale(second, two)));
}

/** Below this the turn's own square no longer shows [rad]; half the digits of a double. */
const SMALL_TURN = 1e-6;
