import type { FlatPoint } from '../../../plan/view.ts';
import { add, dot, rotate, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import { circle, outlineOf, sampledMember } from '../../views/outline.ts';
import { project, type Projection } from '../../views/projection.ts';
import type { LaidThing } from '../laid-site.ts';
import type { Heart } from './drawn-site.ts';
import { planeLines, type Surroundings } from './plane-patch.ts';

type Body = LaidThing['body'];

/** What is drawn of a thing that goes on without end: so many times the reach of the drawing; our own choice. */
const BEYOND = 1.15;
/** A point without a size is drawn as a circle of this share of the drawing's reach; our own choice. */
const SPOT = 0.012;

/** Angles nearer than this are drawn as one [rad]. */
const DRAWN_APART = 0.001;

/**
 * Where a thing stands, then both ends of its swing and where it comes nearest to a tube; nothing is drawn twice.
 *
 * @param nearest how far it has swung where its gap is least [rad]
 */
export const bodiesOf = (
  { body, swing }: LaidThing,
  nearest: number,
): { readonly swung: boolean; readonly body: Body }[] => [
  { swung: false, body },
  ...(swing === null
    ? []
    : [swing.from, swing.to, nearest]
        .filter((angle, index, all) =>
          [0, ...all.slice(0, index)].every((other) => Math.abs(other - angle) > DRAWN_APART),
        )
        .map((angle) => ({ swung: true, body: swungBody(body, swing, angle) }))),
];

function swungBody(body: Body, { about, axis }: { about: Vector3; axis: Vector3 }, angle: number): Body {
  const at = add(about, rotate(subtract(body.at, about), axis, angle));
  switch (body.shape) {
    case 'point':
      return { ...body, at };
    case 'plane':
      return { ...body, at, normal: rotate(body.normal, axis, angle) };
    case 'cylinder':
      return { ...body, at, axis: rotate(body.axis, axis, angle) };
  }
}

/** The lines of a thing on a drawing: a circle, two long edges with their ends, or a stretch of a plane. */
export function outlineOfBody(body: Body, view: Projection, surroundings: Surroundings): FlatPoint[][] {
  const { heart } = surroundings;
  switch (body.shape) {
    case 'point':
      return [circle(project(view, body.at), Math.max(body.radius, SPOT * heart.size))];
    case 'plane':
      return planeLines(body, view, surroundings);
    case 'cylinder': {
      const { axis, radius } = body;
      const { from, to } = stretchOf(body, heart);
      const [start, end] = [add(body.at, scale(axis, from)), add(body.at, scale(axis, to))];
      const piece = { kind: 'straight', from: start, to: end, length: to - from } as const;
      return outlineOf(sampledMember({ name: '', closed: false, pieces: [piece] }), view, 2 * radius).edges;
    }
  }
}

/** Where a cylinder is drawn along its axis: from end to end, and without them as far as the drawing goes [mm]. */
function stretchOf(body: Extract<Body, { shape: 'cylinder' }>, { middle, size }: Heart): { from: number; to: number } {
  if (body.ends !== null) return body.ends;
  const along = dot(subtract(middle, body.at), body.axis);
  const reach = BEYOND * size;
  // one that passes beside the drawing has no stretch within it: it is drawn as long as one through its middle
  return { from: along - reach, to: along + reach };
}
