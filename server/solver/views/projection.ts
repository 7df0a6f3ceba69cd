import type { FlatPoint } from '../../plan/view.ts';
import { cross, dot, type Vector3 } from '../geometry/vector.ts';

/** Where somebody looks from: right and up on the drawing, in the frame's axes; they look along −(right × up). */
export type Projection = { readonly right: Vector3; readonly up: Vector3 };

const X: Vector3 = { x: 1, y: 0, z: 0 };
const Y: Vector3 = { x: 0, y: 1, z: 0 };
const Z: Vector3 = { x: 0, y: 0, z: 1 };

/** Square views along the frame's axes, and a pictorial one: isometric, ISO 5456-3. */
export const PROJECTIONS = {
  top: { right: X, up: Y },
  face: { right: X, up: Z },
  side: { right: Y, up: Z },
  pictorial: {
    right: { x: Math.SQRT1_2, y: -Math.SQRT1_2, z: 0 },
    up: { x: 1 / Math.sqrt(6), y: 1 / Math.sqrt(6), z: 2 / Math.sqrt(6) },
  },
} as const satisfies Record<string, Projection>;

/** The view square to a frame's plane, x as far to the right as it goes. */
export function facing(normal: Vector3): Projection {
  if (Math.abs(normal.z) > 1 - 1e-9) return PROJECTIONS.top;
  const upright = Math.abs(dot(normal, X)) < 1 - 1e-9 ? X : Y;
  const up = cross(normal, upright);
  const size = Math.sqrt(dot(up, up));
  const unitUp = { x: up.x / size, y: up.y / size, z: up.z / size };
  return { right: cross(unitUp, normal), up: unitUp };
}

/** A point or direction on the drawing. */
export const project = (view: Projection, at: Vector3): FlatPoint => [dot(at, view.right), dot(at, view.up)];

/** Rounded to a hundredth of a millimetre, which no drawing shows and which keeps the plan small. */
export const rounded = ([x, y]: FlatPoint): FlatPoint => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

/** A direction on the drawing, a unit vector; up where there is none, or where it points at the eye. */
export function unitOnDrawing(view: Projection, direction: Vector3 | null): FlatPoint {
  const [x, y] = direction === null ? [0, 0] : project(view, direction);
  const size = Math.hypot(x, y);
  return size < 1e-6 ? [0, 1] : [x / size, y / size];
}
