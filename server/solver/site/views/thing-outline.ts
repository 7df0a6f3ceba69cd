import type { FlatPoint } from '../../../plan/view.ts';
import { add, rotate, subtract, type Vector3 } from '../../geometry/vector.ts';
import { circle } from '../../views/outline.ts';
import { project, type Projection } from '../../views/projection.ts';
import type { LaidThing } from '../laid-site.ts';
import { cylinderLines } from './cylinder-outline.ts';
import { planeLines, type Surroundings } from './plane-patch.ts';

type Body = LaidThing['body'];

/** A point without a size is drawn as a circle of this share of the drawing's reach; our own choice. */
const SPOT = 0.012;

/** Angles nearer than this are drawn as one [rad]: a millimetre at an arm of one metre; our own choice. */
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
  const { extent } = surroundings;
  switch (body.shape) {
    case 'point':
      return [circle(project(view, body.at), Math.max(body.radius, SPOT * extent.size))];
    case 'plane':
      return planeLines(body, view, surroundings);
    case 'cylinder':
      return cylinderLines(body, view, extent);
  }
}
