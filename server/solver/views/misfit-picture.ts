import type { MisfitPicture, Way } from '../../plan/correction.ts';
import type { FlatPoint } from '../../plan/view.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeOn, type Centreline } from '../geometry/centreline.ts';
import { closestStation } from '../geometry/closest-station.ts';
import { add, dot, length, scale, subtract, type Vector3 } from '../geometry/vector.ts';
import { centrelineOf, followWanted } from './follow-wanted.ts';
import { facing, project, PROJECTIONS, rounded, type Projection } from './projection.ts';

/** Factors that a person can reckon with, largest first; our own choice. */
const FACTORS = [100, 50, 20, 10, 5, 2] as const;
/** Share of the frame's size that the largest misfit may fill when it is enlarged; our own choice. */
const MOST_SHOWN = 0.12;
/** Two samples stand this share of the frame's size apart at the most, and an arc turns this much between them [rad]. */
const STEP = 1 / 12;
const ARC_STEP = Math.PI / 20;
/** A point this near to the line of its neighbours says nothing [mm]: a sixth of a hairline at 1:10. */
const STRAIGHT = 0.05;

/** A point of a way's frame as a distance from the wanted frame. */
type Sample = { readonly wanted: Vector3; readonly off: Vector3 };

type SampledWay = { readonly key: Way['key']; readonly lines: Sample[][]; readonly joints: Sample[] };

/**
 * Every possible way's centrelines over the wanted ones, with the distance of each point from the place of the wanted
 * frame that it belongs to enlarged by one factor for all: 2, 5, 10, 20, 50 or 100, the largest with which no misfit
 * fills more than 12 % of the frame's size; 1 where a misfit is itself that large.
 *
 * @param view where it is looked at from. Not given: square to the frame's plane; for a frame in space along one of
 *   its axes, whichever shows most of the ways' largest misfits (each way counts by the share of its own that is seen).
 * @returns null where no way is possible, or nothing is to be drawn
 */
export function misfitPicture(
  wanted: FrameGeometry,
  ways: readonly Way[],
  view: Projection | null = null,
): MisfitPicture | null {
  const size = sizeOf(wanted);
  const sampled = ways
    .filter((way) => way.possible && way.members.length > 0)
    .map((way) => sampledWay(wanted, way, size));
  if (sampled.length === 0 || size === 0) return null;
  const seen = view ?? viewFor(wanted, sampled);
  const most = Math.max(...sampled.map((way) => largestSeen(way, seen)));
  const enlarged = FACTORS.find((factor) => factor * most <= MOST_SHOWN * size) ?? 1;
  const drawn = ({ wanted: from, off }: Sample): FlatPoint => rounded(project(seen, add(from, scale(off, enlarged))));
  const lines = {
    wanted: wanted.members.map(({ centreline }) =>
      thinned(pointsOf(centreline, size).map(({ point }) => rounded(project(seen, point)))),
    ),
    ways: sampled.map((way) => ({
      key: way.key,
      lines: way.lines.map((line) => thinned(line.map(drawn))),
      joints: way.joints.map(drawn),
    })),
  };
  return { enlarged, bounds: boundsOf([...lines.wanted, ...lines.ways.flatMap((way) => way.lines)]), ...lines };
}

function sampledWay(wanted: FrameGeometry, way: Way, size: number): SampledWay {
  const followed = way.members.flatMap(({ name, pieces }) => {
    const member = wanted.members.find((one) => one.name === name);
    return member === undefined ? [] : [{ name, ...followedMember(member, centrelineOf(pieces)) }];
  });
  return {
    key: way.key,
    lines: followed.map(({ line, at }) => pointsOf(line, size).flatMap(({ station, point }) => at(station, point))),
    joints: way.joints.flatMap((joint) => {
      const own = followed.find(({ name }) => name === joint.member);
      const place = own === undefined ? undefined : closestStation(own.line, joint.point);
      return own === undefined || place === undefined ? [] : own.at(place.station, place.point);
    }),
  };
}

function followedMember(member: MemberGeometry, line: Centreline) {
  const follow = followWanted(member, line);
  const at = (station: number, point: Vector3): Sample[] => {
    const partner = follow(station, point);
    return partner === undefined ? [] : [{ wanted: partner, off: subtract(point, partner) }];
  };
  return { line, at };
}

/** Points of a centreline close enough to show how it departs from another, with their stations [mm]. */
function pointsOf({ pieces }: Centreline, size: number): { station: number; point: Vector3 }[] {
  const points: { station: number; point: Vector3 }[] = [];
  let begin = 0;
  for (const piece of pieces) {
    const turns = piece.kind === 'arc' ? piece.angle / ARC_STEP : 0;
    // an even count: the middle of a corner is one of the points
    const count = 2 * Math.max(1, Math.ceil(Math.max(piece.length / (STEP * size), turns) / 2));
    for (let index = 0; index <= count; index += 1) {
      const along = (piece.length * index) / count;
      points.push({ station: begin + along, point: placeOn(piece, along).point });
    }
    begin += piece.length;
  }
  return points;
}

/** Longest side of the box round a frame, along its axes [mm]. */
function sizeOf(frame: FrameGeometry): number {
  const points = frame.members.flatMap(({ centreline }) => pointsOf(centreline, Infinity).map(({ point }) => point));
  if (points.length === 0) return 0;
  const spans = (['x', 'y', 'z'] as const).map((axis) => {
    const values = points.map((point) => point[axis]);
    return Math.max(...values) - Math.min(...values);
  });
  return Math.max(...spans);
}

function viewFor({ planeNormal }: FrameGeometry, ways: readonly SampledWay[]): Projection {
  if (planeNormal !== null) return facing(planeNormal);
  const shares = (view: Projection): number =>
    ways.reduce((sum, way) => {
      const whole = Math.max(0, ...way.lines.flat().map(({ off }) => length(off)));
      // a micrometre: a way that fits is seen equally well from everywhere
      return whole < 1e-3 ? sum : sum + largestSeen(way, view) / whole;
    }, 0);
  const { top, face, side } = PROJECTIONS;
  return [face, side].reduce((best: Projection, view) => (shares(view) > shares(best) + 1e-9 ? view : best), top);
}

/** The largest distance from the wanted frame that a view shows of a way [mm]. */
const largestSeen = (way: SampledWay, view: Projection): number =>
  way.lines.reduce(
    (most, line) =>
      line.reduce((worst, { off }) => Math.max(worst, Math.hypot(dot(off, view.right), dot(off, view.up))), most),
    0,
  );

/** A line without the points that lie on the way from one neighbour to the next. */
function thinned(points: readonly FlatPoint[]): FlatPoint[] {
  const kept: FlatPoint[] = [];
  for (const [index, point] of points.entries()) {
    const [before, after] = [kept.at(-1), points[index + 1]];
    if (before === undefined || after === undefined || !liesBetween(point, before, after)) kept.push(point);
  }
  return kept;
}

function liesBetween(point: FlatPoint, before: FlatPoint, after: FlatPoint): boolean {
  const [x, y] = [after[0] - before[0], after[1] - before[1]];
  const [px, py] = [point[0] - before[0], point[1] - before[1]];
  const size = Math.hypot(x, y);
  if (size === 0) return px === 0 && py === 0;
  const along = (px * x + py * y) / size;
  return Math.abs(px * y - py * x) <= STRAIGHT * size && along >= 0 && along <= size;
}

function boundsOf(lines: readonly (readonly FlatPoint[])[]): MisfitPicture['bounds'] {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of lines.flat()) {
    [left, right] = [Math.min(left, x), Math.max(right, x)];
    [bottom, top] = [Math.min(bottom, y), Math.max(top, y)];
  }
  return [left, bottom, right, top];
}
