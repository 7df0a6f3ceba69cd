import { centrelineFromChain, placeOn, type Centreline, type Link } from './centreline.ts';
import type { Stand } from './chain.ts';
import { movedLine } from './moved-centreline.ts';
import { moved, turned, type RigidMotion } from './rigid-motion.ts';
import { cross, dot, squareTo, unit, type Vector3 } from './vector.ts';

/** A centreline, with the direction square to it that its chain was begun with. */
export type LaidLine = { readonly line: Centreline; readonly normal: Vector3 };

/** Lays links end to end. */
export const laid = (start: Stand, links: readonly Link[]): LaidLine => ({
  line: centrelineFromChain(start, links),
  normal: start.normal,
});

/** How a line stands at a station; before the first and after the last piece the end piece is carried on. */
export function standAt({ line, normal }: LaidLine, station: number): Stand | undefined {
  const { pieces } = line;
  let from = 0;
  let beside = normal;
  for (let index = 0; index < pieces.length; index += 1) {
    const piece = pieces[index];
    if (piece === undefined) return undefined;
    if (piece.kind === 'arc') beside = piece.normal;
    if (station <= from + piece.length || index === pieces.length - 1) {
      const { point, tangent } = placeOn(piece, station - from);
      return { point, direction: tangent, normal: beside };
    }
    from += piece.length;
  }
  return undefined;
}

/** The motion that brings one stand onto another. */
export function motionBetween(from: Stand, to: Stand): RigidMotion {
  const third = { from: cross(from.normal, from.direction), to: cross(to.normal, to.direction) };
  // R = Σ to ⊗ from over the three directions
  const row = (axis: 'x' | 'y' | 'z'): Vector3 => ({
    x: to.direction[axis] * from.direction.x + to.normal[axis] * from.normal.x + third.to[axis] * third.from.x,
    y: to.direction[axis] * from.direction.y + to.normal[axis] * from.normal.y + third.to[axis] * third.from.y,
    z: to.direction[axis] * from.direction.z + to.normal[axis] * from.normal.z + third.to[axis] * third.from.z,
  });
  const turn = { x: row('x'), y: row('y'), z: row('z') };
  const { point } = from;
  return {
    x: turn.x,
    y: turn.y,
    z: turn.z,
    shift: {
      x: to.point.x - dot(turn.x, point),
      y: to.point.y - dot(turn.y, point),
      z: to.point.z - dot(turn.z, point),
    },
  };
}

export const movedStand = (motion: RigidMotion, { point, direction, normal }: Stand): Stand => ({
  point: moved(motion, point),
  direction: turned(motion, direction),
  normal: turned(motion, normal),
});

export const movedLaid = (motion: RigidMotion, { line, normal }: LaidLine): LaidLine => ({
  line: movedLine(motion, line),
  normal: turned(motion, normal),
});

/** A straight from point to point, which takes its direction square to it from another stand. */
export function laidBetween(from: Vector3, to: Vector3, like: Stand): LaidLine | undefined {
  const way = { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
  const direction = unit(way);
  if (direction === undefined) return undefined;
  const size = dot(way, direction);
  return laid({ point: from, direction, normal: squareTo(direction, like.normal) }, [
    { kind: 'straight', length: size },
  ]);
}
