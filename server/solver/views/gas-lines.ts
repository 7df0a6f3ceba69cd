import type { Chamber, Stretch } from '../../plan/purge.ts';
import type { ViewGas } from '../../plan/view.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { length, subtract, type Vector3 } from '../geometry/vector.ts';
import type { SampledMember } from './outline.ts';
import { project, rounded, type Projection } from './projection.ts';

/** A way of the gas in space, found once for all views, or bore that no gas runs through. */
export type GasLine = { readonly chamber: number; readonly flows: boolean; readonly points: readonly Vector3[] };

/** Nearer than this two stretches are one line [mm]: half of what is drawn. */
const MEETS = 0.05;

/**
 * The ways of the gas through every chamber, each one line from the feed to its vent, and the dead legs.
 *
 * @param frame the frame that is purged, and its members as they are drawn
 */
export function gasLines(
  chambers: readonly Pick<Chamber, 'number' | 'paths' | 'deadLegs'>[],
  { frame, sampled }: { readonly frame: FrameGeometry; readonly sampled: readonly SampledMember[] },
): GasLine[] {
  const along = (stretch: Stretch): Vector3[] => pointsAlong(stretch, frame, sampled);
  const lines = (chamber: number, flows: boolean, stretches: readonly Stretch[]): GasLine[] =>
    joined(stretches.map(along)).map((points) => ({ chamber, flows, points }));
  return chambers.flatMap(({ number, paths, deadLegs }) => [
    ...paths.flatMap(({ stretches }) => lines(number, true, stretches)),
    ...deadLegs.flatMap(({ stretches }) => lines(number, false, stretches)),
  ]);
}

/** Points of a member's centreline from one station to another, which may be the smaller, close enough to draw. */
function pointsAlong(
  { member: name, from, to }: Stretch,
  frame: FrameGeometry,
  sampled: readonly SampledMember[],
): Vector3[] {
  const member = frame.members.find((one) => one.name === name);
  const ends = member === undefined ? [] : [from, to].map((station) => placeAt(member.centreline, station)?.point);
  const [first, last] = ends;
  if (first === undefined || last === undefined) return [];
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const between = (sampled.find((one) => one.name === name)?.samples ?? [])
    .filter(({ station }) => station > low + MEETS && station < high - MEETS)
    .map(({ point }) => point);
  return [first, ...(from > to ? between.toReversed() : between), last];
}

/** Lines that begin where the last one ended are one. */
function joined(lines: readonly Vector3[][]): Vector3[][] {
  const all: Vector3[][] = [];
  for (const line of lines) {
    const before = all.at(-1);
    const [end, start] = [before?.at(-1), line[0]];
    if (start === undefined) continue;
    if (before !== undefined && end !== undefined && length(subtract(end, start)) < MEETS)
      before.push(...line.slice(1));
    else all.push([...line]);
  }
  return all;
}

/** The gas in one view, on the layer of the frame that is purged; points that fall on each other are drawn once. */
export const gasOn = (lines: readonly GasLine[], layer: ViewGas['layer'], view: Projection): ViewGas[] =>
  lines.map(({ chamber, flows, points }) => {
    const drawn = points.map((point) => rounded(project(view, point)));
    const line = drawn.filter(([x, y], index) => x !== drawn[index - 1]?.[0] || y !== drawn[index - 1]?.[1]);
    return { chamber, flows, layer, line };
  });
