import { placeAt, type Centreline } from '../../geometry/centreline.ts';
import { bestMotion, moved, turned, UNMOVED, type PointPair, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { subtract, type Vector3 } from '../../geometry/vector.ts';
import type { BodyTarget } from './body-targets.ts';
import type { CutPlace } from './layouts.ts';
import type { SpliceProblem } from './splice-problem.ts';

/** A layout that is solved already: its bodies' motions, with the bodies of its targets and of its joints. */
export type SolvedMotions = {
  readonly motions: readonly RigidMotion[];
  readonly problem: Pick<SpliceProblem, 'targets' | 'joints'>;
};

/** Bodies that are parts of others begin as those ended; targets and joints are the same ones in the same order. */
export function startsLike(
  { motions, problem }: SolvedMotions,
  count: number,
  targets: readonly BodyTarget[],
  cuts: readonly CutLine[],
): RigidMotion[] {
  const starts = new Array<RigidMotion>(count).fill(UNMOVED);
  const take = (body: number, like: number | undefined) => {
    const motion = like === undefined ? undefined : motions[like];
    if (motion !== undefined) starts[body] = motion;
  };
  for (const [index, { body }] of targets.entries()) take(body, problem.targets[index]?.body);
  for (const [index, { bodyA, bodyB }] of cuts.entries()) {
    take(bodyA, problem.joints[index]?.bodyA);
    take(bodyB, problem.joints[index]?.bodyB);
  }
  return starts;
}

/** A body needs so many targets to know where it stands by itself. */
const ENOUGH_IN_PLANE = 2;
const ENOUGH_IN_SPACE = 3;

export type CutLine = {
  readonly place: CutPlace;
  readonly line: Centreline;
  readonly bodyA: number;
  readonly bodyB: number;
};

/**
 * Where bodies begin that have too few targets to know by themselves where they stand: one after the other, each goes on
 * from a neighbour that stands already, as its tube does, and along it to its own target where it has one.
 */
export function carried(
  motions: readonly RigidMotion[],
  targets: readonly BodyTarget[],
  cuts: readonly CutLine[],
  planeNormal: Vector3 | null,
): RigidMotion[] {
  const enough = planeNormal === null ? ENOUGH_IN_SPACE : ENOUGH_IN_PLANE;
  const own = motions.map((_, body) => targets.filter((one) => one.body === body && one.target.kind !== 'guide'));
  const placed: (RigidMotion | undefined)[] = motions.map((motion, body) =>
    (own[body]?.length ?? 0) >= enough ? motion : undefined,
  );
  if (!placed.some((motion) => motion !== undefined)) {
    const counts = own.map(({ length: count }) => count);
    const first = counts.indexOf(counts.reduce((most, count) => Math.max(most, count), 0));
    placed[first] = motions[first];
  }
  for (let grown = true; grown;) {
    grown = false;
    for (const { place, line, bodyA, bodyB } of cuts) {
      const [from, to] = placed[bodyA] === undefined ? [bodyB, bodyA] : [bodyA, bodyB];
      const there = placed[from];
      const at = placeAt(line, place.at)?.point;
      if (there === undefined || at === undefined || placed[to] !== undefined) continue;
      placed[to] = goesOn(there, at, own[to] ?? [], planeNormal);
      grown = true;
    }
  }
  return placed.map((motion, body) => motion ?? motions[body] ?? UNMOVED);
}

/** How little a neighbour's end counts beside the targets that a body has itself: it decides only what they leave open. */
const NEIGHBOUR = 1e-4;

function goesOn(there: RigidMotion, at: Vector3, own: readonly BodyTarget[], planeNormal: Vector3 | null): RigidMotion {
  const [only] = own;
  if (only === undefined) return there;
  if (own.length === 1) {
    const { x, y, z } = there;
    const shift = subtract(only.wanted, turned(there, only.point));
    return { x, y, z, shift };
  }
  const pairs: PointPair[] = own.map(({ point, wanted, weight }) => ({ from: point, to: wanted, weight: weight ** 2 }));
  return bestMotion([...pairs, { from: at, to: moved(there, at), weight: NEIGHBOUR }], planeNormal);
}
