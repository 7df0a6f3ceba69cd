import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import type { Centreline } from '../../geometry/centreline.ts';
import { placeAt } from '../../geometry/centreline.ts';
import { moved, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { clearOf } from '../../geometry/solid.ts';
import { add, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { CorrectionTarget, Post } from '../corrected.ts';
import { farFrom } from '../post-room.ts';
import { clearOfWeld } from './free-stretches.ts';
import type { Hinge } from './hinges.ts';
import { freeMotions, targetsOfBodies, type BodyTarget } from './body-targets.ts';
import { carried, startsLike, type SolvedMotions } from './body-starts.ts';
import { closeSides } from './joint-closing.ts';
import type { CutPlace, Layout } from './layouts.ts';

/** What a saw and a weld ask for, and what a let-in piece must be at the least [mm]. */
export type ClosingSizes = {
  readonly outsideDiameter: number;
  readonly kerf: number;
  readonly gap: number;
  readonly shrinkage: number;
  /** How well the tape was read. */
  readonly tape: number;
};

/** A joint of a layout, with the bodies before and behind it. */
export type LayoutJoint = {
  readonly place: CutPlace;
  readonly line: Centreline;
  readonly bodyA: number;
  readonly bodyB: number;
  /** Half of the old tube taken out where new tube is let in [mm]; null: the faces are brought together. */
  readonly takenOut: number | null;
  /** Where its middle may go [mm]. */
  readonly low: number;
  readonly high: number;
};

/** A point of a body, before its body moves, that is nearest to a post's axis there. */
export type KeepAway = { readonly body: number; readonly point: Vector3; readonly post: Post };

/** Motions of the bodies to be found so that targets are met and joints close. */
export type SpliceProblem = {
  readonly layout: Layout;
  readonly joints: readonly LayoutJoint[];
  readonly targets: readonly BodyTarget[];
  readonly starts: readonly RigidMotion[];
  /** Middle of each body after its start motion: what its turn is about. */
  readonly centres: readonly Vector3[];
  /** Where the frame lies in one plane and stays in it. */
  readonly planeNormal: Vector3 | null;
  readonly sizes: ClosingSizes;
  /** Points of the tube that must keep away from posts. */
  readonly keepAways: readonly KeepAway[];
  /** Bends that may be turned as well, with the bodies before and behind each; none in a plain splice. */
  readonly hinges: readonly { readonly hinge: Hinge; readonly bodyA: number; readonly bodyB: number }[];
};

/** New tube shorter than this is not let in [mm]: its two welds keep the distance of two welds. */
export const leastLetIn = clearOfWeld;

/**
 * Sets a layout up: bodies begin where their own targets want them; those with too few are carried by their neighbours.
 *
 * @param bent bends that may be turned too, the layout's bodies parted at each; and the same layout solved without them
 * @returns undefined where a joint has the same body on both sides: the cut parts nothing
 */
export function spliceProblem(
  layout: Layout,
  frame: FrameGeometry,
  memberIndex: ReadonlyMap<string, number>,
  targets: readonly CorrectionTarget[],
  planeNormal: Vector3 | null,
  sizes: ClosingSizes,
  bent: { readonly hinges: readonly Hinge[]; readonly like: SolvedMotions } | null = null,
  posts: readonly Post[] = [],
): SpliceProblem | undefined {
  const { bodies, places } = layout;
  const own = targetsOfBodies(layout, memberIndex, targets, sizes.tape);
  const cuts = places.flatMap((place) => {
    const line = frame.members[place.stretch.member]?.centreline;
    if (line === undefined) return [];
    // a hair either side of the cut tells the two bodies
    const bodyA = bodies.at(place.stretch.member, place.at - 1e-6);
    const bodyB = bodies.at(place.stretch.member, place.at + 1e-6);
    return [{ place, line, bodyA, bodyB }];
  });
  if (cuts.some(({ bodyA, bodyB }) => bodyA === bodyB)) return undefined;
  const { motions } = freeMotions(bodies.count, own, planeNormal);
  const starts =
    bent === null ? carried(motions, own, cuts, planeNormal) : startsLike(bent.like, bodies.count, own, cuts);
  const centres = starts.map((motion, body) => {
    const points = own.filter((one) => one.body === body).map(({ point }) => moved(motion, point));
    for (const { line, place, bodyA, bodyB } of cuts) {
      const point = bodyA === body || bodyB === body ? placeAt(line, place.at)?.point : undefined;
      if (point !== undefined) points.push(moved(motion, point));
    }
    const sum = points.reduce(add, { x: 0, y: 0, z: 0 });
    return points.length === 0 ? sum : scale(sum, 1 / points.length);
  });
  const joints = cuts.map((cut): LayoutJoint => {
    const [motionA, motionB] = [starts[cut.bodyA], starts[cut.bodyB]];
    const { line, place } = cut;
    const closed =
      motionA === undefined || motionB === undefined
        ? undefined
        : closeSides({ line, middle: place.at, takenOut: null }, motionA, motionB);
    const half = closed?.half ?? 0;
    const opening = -2 * half;
    // less than the tape is no opening; new tube is as long as it must be, and that much more of the old comes out
    const isLetIn = opening > sizes.tape;
    const takenOut = isLetIn
      ? Math.max(sizes.kerf, (leastLetIn(sizes.outsideDiameter) + sizes.gap - sizes.shrinkage - opening) / 2)
      : null;
    const room = Math.max(takenOut ?? half, 0);
    const { from, to } = place.stretch;
    const fits = to - from > 2 * room;
    return {
      ...cut,
      takenOut,
      low: !place.movable ? place.at : fits ? Math.min(from + room, place.at) : (from + to) / 2,
      high: !place.movable ? place.at : fits ? Math.max(to - room, place.at) : (from + to) / 2,
    };
  });
  const hinges = (bent?.hinges ?? []).map((hinge) => ({
    hinge,
    bodyA: bodies.at(hinge.member, hinge.station - 1e-6),
    bodyB: bodies.at(hinge.member, hinge.station + 1e-6),
  }));
  const keepAways = posts.flatMap((post) => nearestTo(post, frame, layout, starts, sizes.outsideDiameter));
  return { layout, joints, targets: own, starts, centres, planeNormal, sizes, keepAways, hinges };
}

/** Two unit vectors that span the plane with this normal. */
export function axesOf(normal: Vector3): readonly [Vector3, Vector3] {
  const like = Math.abs(normal.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  const first = unit(subtract(like, scale(normal, like.x * normal.x + like.y * normal.y + like.z * normal.z)));
  const one = first ?? { x: 1, y: 0, z: 0 };
  return [
    one,
    {
      x: normal.y * one.z - normal.z * one.y,
      y: normal.z * one.x - normal.x * one.z,
      z: normal.x * one.y - normal.y * one.x,
    },
  ];
}

/** Of every body the point of its tubes that comes nearest to a post where the body begins, to half a diameter. */
function nearestTo(
  post: Post,
  { members }: FrameGeometry,
  { bodies }: Layout,
  starts: readonly RigidMotion[],
  outsideDiameter: number,
): KeepAway[] {
  const nearest = new Map<number, { point: Vector3; away: number }>();
  for (const [member, { centreline }] of members.entries()) {
    const steps = Math.min(Math.ceil((2 * centreline.length) / outsideDiameter), MOST_SAMPLES);
    for (let step = 0; step <= steps; step += 1) {
      const station = (centreline.length * step) / steps;
      const body = bodies.at(member, station);
      const [point, start] = [placeAt(centreline, station)?.point, starts[body]];
      if (point === undefined || start === undefined) continue;
      const away = clearOf(post.solid, moved(start, point)).distance;
      if (away < (nearest.get(body)?.away ?? Infinity)) nearest.set(body, { point, away });
    }
  }
  // a body that is far from the post stays clear of it however it is moved
  return [...nearest].flatMap(([body, { point, away }]) => (away >= farFrom(post) ? [] : [{ body, point, post }]));
}

/** Samples of one member at the most; our own choice. */
const MOST_SAMPLES = 400;
