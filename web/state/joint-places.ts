import type { ReturnedMember } from '../../server/plan/correction.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { FlatPoint, View, ViewMember } from '../../server/plan/view.ts';
import type { Screen } from './screen.ts';

/** A member as it is drawn, with how far along it each of its points stands [mm]. */
export type PointedLine = { readonly points: readonly FlatPoint[]; readonly stations: readonly number[] };

/** A part of a member that a joint may stand on [mm along it]. */
export type Stretch = { readonly from: number; readonly to: number };

/** The place on the drawing [mm] under a place on the screen [px]. */
export const onDrawing = ([x, y]: FlatPoint, screen: Screen): FlatPoint => [
  (x - screen.left) / screen.scale,
  (screen.top - y) / screen.scale,
];

/** The line of a member of the frame as it came back in a view; none where the view does not show it. */
export function pointedLine(view: View, name: string): PointedLine | null {
  const layer = view.layers.find(({ role }) => role === 'came-back');
  const member: ViewMember | undefined = layer?.members.find((one) => one.member === name);
  if (member?.stations?.length !== member?.centreline.length || member?.stations === undefined) return null;
  return member.stations.length < 2 ? null : { points: member.centreline, stations: member.stations };
}

/** Each length between two points of a line, with its stations. */
function* lengthsOf({ points, stations }: PointedLine) {
  for (let index = 1; index < points.length; index += 1) {
    const [from, to] = [points[index - 1], points[index]];
    const [start, finish] = [stations[index - 1], stations[index]];
    if (from === undefined || to === undefined || start === undefined || finish === undefined) continue;
    yield { from, to, start, finish };
  }
}

/** How far along a line the place nearest to a point of the drawing is [mm along the member]. */
export function nearestStation(line: PointedLine, [x, y]: FlatPoint): number {
  let [best, station] = [Infinity, line.stations[0] ?? 0];
  for (const { from, to, start, finish } of lengthsOf(line)) {
    const along: FlatPoint = [to[0] - from[0], to[1] - from[1]];
    const square = along[0] ** 2 + along[1] ** 2;
    const foot = square === 0 ? 0 : ((x - from[0]) * along[0] + (y - from[1]) * along[1]) / square;
    const share = Math.max(0, Math.min(1, foot));
    const off = Math.hypot(from[0] + share * along[0] - x, from[1] + share * along[1] - y);
    if (off >= best) continue;
    best = off;
    station = start + share * (finish - start);
  }
  return station;
}

/** Where on the drawing a station is, and which way the line runs there (a unit vector); none where it has no length. */
export function placeAtStation(line: PointedLine, station: number): { at: FlatPoint; along: FlatPoint } | null {
  let place: { at: FlatPoint; along: FlatPoint } | null = null;
  for (const { from, to, start, finish } of lengthsOf(line)) {
    const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (size === 0) continue;
    if (place !== null && station < start) break;
    const share = finish === start ? 0 : Math.max(0, Math.min(1, (station - start) / (finish - start)));
    const along: FlatPoint = [(to[0] - from[0]) / size, (to[1] - from[1]) / size];
    place = { at: [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])], along };
  }
  return place;
}

/** Where a joint may be put: its own range, and every other free stretch of its member, in order. */
export function stretchesFor(joint: Joint, member: ReturnedMember | undefined): readonly Stretch[] {
  const own = { from: joint.range.from, to: joint.range.to };
  const others = (member?.free ?? []).filter(({ from, to }) => to < own.from || from > own.to);
  return [own, ...others.map(({ from, to }) => ({ from, to }))].sort((a, b) => a.from - b.from);
}

/** The nearest place in one of the stretches; the station itself where there are none. */
export function heldWithin(stretches: readonly Stretch[], station: number): number {
  const held = stretches.map(({ from, to }) => Math.max(from, Math.min(to, station)));
  return held.reduce(
    (best, one) => (Math.abs(one - station) < Math.abs(best - station) ? one : best),
    held[0] ?? station,
  );
}

/** One step along the member: past the end of a stretch it goes on at the next one, and stays where there is none. */
export function steppedBy(stretches: readonly Stretch[], station: number, by: number): number {
  const next = station + by;
  if (stretches.length === 0 || stretches.some(({ from, to }) => next >= from && next <= to)) return next;
  const home = stretches.find(({ from, to }) => station >= from && station <= to);
  const edge = by > 0 ? home?.to : home?.from;
  if (edge !== undefined && Math.abs(edge - station) > 1e-6) return edge;
  const ahead = stretches.filter(({ from, to }) => (by > 0 ? from > station : to < station));
  const first = by > 0 ? ahead[0]?.from : ahead.at(-1)?.to;
  return first ?? station;
}
