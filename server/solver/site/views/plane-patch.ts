import type { FlatPoint } from '../../../plan/view.ts';
import type { Box } from '../../geometry/box.ts';
import { heartOf } from '../../geometry/solid.ts';
import { add, cross, dot, scale, squareTo, subtract, type Vector3 } from '../../geometry/vector.ts';
import { project, rounded, unitOnDrawing, type Projection } from '../../views/projection.ts';
import type { LaidThing } from '../laid-site.ts';
import type { Extent } from './drawn-site.ts';

type Plane = Extract<LaidThing['body'], { shape: 'plane' }>;

/** What is drawn round: where the drawing is, and the feet of the legs and the points of the site. */
export type Surroundings = { readonly extent: Extent; readonly standing: readonly Vector3[] };

/** A foot or a point this near to a plane stands on it [mm]: two accuracies of a tape and a weld; our own choice. */
const ON_PLANE = 5;
/** Seen flatter than this sine, 3°, a plane is a line; our own choice. */
const EDGE_ON = 0.05;

/** A stretch of a plane round what stands on it: its outline, closed, or one line where it is seen edge-on. */
export function planeLines(plane: Plane, view: Projection, surroundings: Surroundings): FlatPoint[][] {
  const corners = cornersOf(plane, surroundings);
  const flat = corners.map((corner) => project(view, corner));
  const eye = cross(view.right, view.up);
  if (Math.abs(dot(plane.normal, eye)) > EDGE_ON) return [[...flat, ...flat.slice(0, 1)].map(rounded)];
  const [rise, run] = unitOnDrawing(view, plane.normal);
  const ends = flat.toSorted((a, b) => a[1] * rise - a[0] * run - (b[1] * rise - b[0] * run));
  const [first, last] = [ends[0], ends.at(-1)];
  return first === undefined || last === undefined ? [] : [[rounded(first), rounded(last)]];
}

/** Four corners round everything near that stands on the plane, its sides along and across what is level in the structure. */
function cornersOf(plane: Plane, { extent, standing }: Surroundings): Vector3[] {
  const upright = Math.abs(plane.normal.z) < Math.SQRT1_2;
  const across = upright ? squareTo(plane.normal, { x: 0, y: 0, z: 1 }) : squareTo(plane.normal, { x: 1, y: 0, z: 0 });
  const beside = cross(plane.normal, across);
  const on = [...standing, plane.at].filter(
    (point) => isIn(extent.box, point) && Math.abs(dot(subtract(point, plane.at), plane.normal)) < ON_PLANE,
  );
  const round = on.length > 0 ? on : [heartOf(plane, extent.middle)];
  const range = (way: Vector3): [number, number] => {
    const all = round.map((point) => dot(subtract(point, plane.at), way));
    return [Math.min(...all) - extent.beyond, Math.max(...all) + extent.beyond];
  };
  const [one, other] = [range(across), range(beside)];
  return [
    [one[0], other[0]],
    [one[1], other[0]],
    [one[1], other[1]],
    [one[0], other[1]],
  ].map(([along = 0, aside = 0]) => add(plane.at, add(scale(across, along), scale(beside, aside))));
}

const isIn = ({ low, high }: Box, { x, y, z }: Vector3): boolean =>
  x >= low.x && x <= high.x && y >= low.y && y <= high.y && z >= low.z && z <= high.z;
