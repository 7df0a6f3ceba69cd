import type { FlatPoint } from '../../../plan/view.ts';
import { add, cross, dot, length, scale, squareTo, subtract, type Vector3 } from '../../geometry/vector.ts';
import { project, rounded, unitOnDrawing, type Projection } from '../../views/projection.ts';
import type { LaidThing } from '../laid-site.ts';
import { nearestOf, type Heart } from './drawn-site.ts';

type Plane = Extract<LaidThing['body'], { shape: 'plane' }>;

/** What is drawn round: where the drawing is, and the feet of the legs and the points of the site. */
export type Surroundings = { readonly heart: Heart; readonly standing: readonly Vector3[] };

/** A foot or a point this near to a plane stands on it [mm]: two accuracies of a tape and a weld; our own choice. */
const ON_PLANE = 5;
/** How far a plane is drawn beyond what stands on it, as a share of the drawing's reach; our own choice. */
const BEYOND = 0.15;
/** What lies within so many reaches of the drawing is drawn round; our own choice. */
const NEAR = 2;
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
function cornersOf(plane: Plane, { heart, standing }: Surroundings): Vector3[] {
  const upright = Math.abs(plane.normal.z) < Math.SQRT1_2;
  const across = upright ? squareTo(plane.normal, { x: 0, y: 0, z: 1 }) : squareTo(plane.normal, { x: 1, y: 0, z: 0 });
  const beside = cross(plane.normal, across);
  const isNear = (point: Vector3): boolean => length(subtract(point, heart.middle)) < NEAR * heart.size;
  const on = [...standing, plane.at].filter(
    (point) => isNear(point) && Math.abs(dot(subtract(point, plane.at), plane.normal)) < ON_PLANE,
  );
  const round = on.length > 0 ? on : [nearestOf(plane, heart.middle)];
  const range = (way: Vector3): [number, number] => {
    const all = round.map((point) => dot(subtract(point, plane.at), way));
    return [Math.min(...all) - BEYOND * heart.size, Math.max(...all) + BEYOND * heart.size];
  };
  const [one, other] = [range(across), range(beside)];
  return [
    [one[0], other[0]],
    [one[1], other[0]],
    [one[1], other[1]],
    [one[0], other[1]],
  ].map(([along = 0, aside = 0]) => add(plane.at, add(scale(across, along), scale(beside, aside))));
}
