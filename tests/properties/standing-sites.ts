import fc from 'fast-check';
import type { Site } from '../../server/job/site.ts';
import type { Slope, Standing } from '../../server/job/standing.ts';
import { composed, inverted, moved, type RigidMotion } from '../../server/solver/geometry/rigid-motion.ts';
import {
  add,
  cross,
  dot,
  length,
  rotate,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';
import type { LaidFrame } from '../../server/solver/site/laid-site.ts';
import { place, UPRIGHT } from '../solver/site/standing-site.ts';

export const RUNS = { numRuns: 100, seed: 7 };
export const DEGREE = Math.PI / 180;

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const vector = fc
  .record({ x: between(-1, 1), y: between(-1, 1), z: between(-1, 1) })
  .filter((one) => length(one) > 0.2);
export const direction = vector.map((one) => unit(one)!);
/** A structure that lies up to some 15° out of level. */
export const lying = fc
  .record({ x: between(-0.2, 0.2), y: between(-0.2, 0.2) })
  .map(({ x, y }) => unit({ x, y, z: 1 })!);
export const slope = (angle: number) =>
  fc.record({
    along: vector,
    angle: between(-angle, angle),
    to: fc.constantFrom('level' as const, 'structure' as const),
  });
export const placing = fc
  .record({ x: direction, y: direction, origin: vector })
  .filter(({ x, y }) => length(cross(x, y)) > 0.1)
  .map(({ x, y, origin }): Site['placing'] => ({ by: 'axes', origin: scale(origin, 900), x, y }));

export const HINGE = { from: place('start'), to: place('finish') };
export const standing = (change: Partial<Standing>): Standing => ({
  hinge: null,
  slopes: [],
  height: null,
  swing: null,
  ...change,
});
export const uprightOf = ({ to }: Pick<Slope, 'to'>, up: Vector3): Vector3 => (to === 'level' ? up : UPRIGHT);

/** The slope as a person would find it [degrees]: of two points of the frame, the rise over their distance. */
export function measured({ motion }: LaidFrame, { along, to }: Pick<Slope, 'along' | 'to'>, up: Vector3): number {
  const way = subtract(
    moved(motion, add({ x: 37, y: -11, z: 5 }, scale(along, 800))),
    moved(motion, { x: 37, y: -11, z: 5 }),
  );
  return Math.asin(dot(way, uprightOf({ to }, up)) / length(way)) / DEGREE;
}

/** The middle of the hoop's first corner. */
export function cornerOf({ lines }: LaidFrame): Vector3 {
  const arc = lines[0]!.centreline.pieces[1]!;
  if (arc.kind !== 'arc') throw new Error('a hoop has a corner after its first leg');
  const centre = add(arc.start, scale(cross(arc.normal, arc.direction), arc.radius));
  return add(centre, rotate(subtract(arc.start, centre), arc.normal, arc.angle / 2));
}

/** The turn of a frame from how it was placed. */
export const turnFrom = (placed: LaidFrame, stood: LaidFrame): RigidMotion =>
  composed(stood.motion, inverted(placed.motion));
