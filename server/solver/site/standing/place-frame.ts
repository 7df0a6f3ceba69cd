import type { Placing } from '../../../job/standing.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { DEGREES, RADIANS } from '../../geometry/angle.ts';
import { furthestPair } from '../../geometry/furthest-pair.ts';
import { bestMotion, moved, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { angleBetween, cross, dot, length, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { Off, SiteSource } from '../laid-site.ts';
import { sitePlace } from '../points/site-places.ts';
import { madePlace } from './frame-place.ts';
import { placeMissing } from './place-missing.ts';

/** The frame where it was placed: from its axes to the structure's, and how far each pair is apart [mm]. */
export type PlacedFrame = { readonly motion: RigidMotion; readonly misfits: readonly number[] };

type Known = { readonly points: ReadonlyMap<string, Vector3>; readonly off: Off };
type PlacedOrNot = { readonly placed: PlacedFrame } | { readonly findings: readonly Finding[] };

/** x and y nearer to one line than this give no plane [rad]; our own choice. */
const IN_LINE = RADIANS;
/** Places no further off a line than this [mm], or than this share of its length, lie in line; our own choice. */
const OFF_LINE = { least: 1, share: 0.01 };

/** Where the frame was placed, before it is turned to slopes and heights; findings alone where that cannot be told. */
export const placeFrame = (source: SiteSource, known: Known): PlacedOrNot =>
  source.site.placing.by === 'axes' ? byAxes(source.site.placing, known) : byPoints(source.site.placing, source, known);

/** Origin, x as typed, y squared to it, z = x × y. */
function byAxes(placing: Extract<Placing, { by: 'axes' }>, { points, off }: Known): PlacedOrNot {
  const origin = sitePlace(placing.origin, '/site/placing/origin', points, off);
  if ('finding' in origin) return { findings: [origin.finding] };
  const [x, like] = [unit(placing.x), unit(placing.y)];
  if (x === undefined || like === undefined) {
    return { findings: [finding('placing-no-axes', 'stop', `/site/placing/${x === undefined ? 'x' : 'y'}`)] };
  }
  const between = angleBetween(x, like);
  const y = unit(subtract(like, scale(x, dot(like, x))));
  if (y === undefined || Math.sin(between) < Math.sin(IN_LINE)) {
    return { findings: [finding('placing-no-axes', 'stop', '/site/placing/y', { value: between * DEGREES })] };
  }
  const z = cross(x, y);
  const row = (axis: 'x' | 'y' | 'z'): Vector3 => ({ x: x[axis], y: y[axis], z: z[axis] });
  return { placed: { motion: { x: row('x'), y: row('y'), z: row('z'), shift: origin.point }, misfits: [] } };
}

/** Places of the frame laid on points of the site with the least sum of squared distances. */
function byPoints(placing: Extract<Placing, { by: 'points' }>, source: SiteSource, { points }: Known): PlacedOrNot {
  const findings: Finding[] = [];
  const pairs = placing.pairs.flatMap(({ at, point }, index) => {
    const field = `/site/placing/pairs/${String(index)}`;
    const from = madePlace(at, source.wanted, source.made);
    const to = points.get(point);
    if (from === undefined) findings.push(placeMissing(at, `${field}/at`));
    if (to === undefined) findings.push(finding('site-name-missing', 'stop', `${field}/point`, { name: point }));
    return from === undefined || to === undefined ? [] : [{ from: from.point, to, weight: 1 }];
  });
  if (findings.length > 0) return { findings };
  const inLine = [pairs.map(({ from }) => from), pairs.map(({ to }) => to)].map(offLine).find(({ flat }) => flat);
  if (inLine !== undefined) {
    return { findings: [finding('placing-in-line', 'stop', '/site/placing/pairs', { value: inLine.off })] };
  }
  const motion = bestMotion(pairs);
  return { placed: { motion, misfits: pairs.map(({ from, to }) => length(subtract(moved(motion, from), to))) } };
}

/** How far the furthest of some points lies off the line through the two that are furthest apart [mm]. */
function offLine(points: readonly Vector3[]): { off: number; flat: boolean } {
  const [from, to] = furthestPair(points).map((index) => points[index]);
  const line = from && to && unit(subtract(to, from));
  if (from === undefined || to === undefined || line === undefined) return { off: 0, flat: true };
  const off = Math.max(...points.map((point) => length(cross(subtract(point, from), line))));
  return { off, flat: off < Math.max(OFF_LINE.least, OFF_LINE.share * length(subtract(to, from))) };
}
