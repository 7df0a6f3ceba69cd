import { add, dot, length, ORIGIN, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import { planPieces } from '../../geometry/plan-pieces.ts';
import { hiddenOf } from '../../views/hidden.ts';
import { sampledMember, type SampledMember } from '../../views/outline.ts';
import type { LaidLeg, LaidThing } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';

/** Where the drawing is: the middle of the box round the frame and its legs, and how far they reach from it [mm]. */
export type Heart = { readonly middle: Vector3; readonly size: number };

/** Everything that is drawn, found once for all views, in the structure's axes. */
export type DrawnSite = {
  readonly heart: Heart;
  readonly members: readonly SampledMember[];
  readonly legs: readonly { readonly laid: LaidLeg; readonly tube: SampledMember }[];
  readonly things: readonly LaidThing[];
  readonly points: readonly { readonly name: string; readonly point: Vector3 }[];
};

/**
 * Further from the frame than so many times its own reach nothing is drawn: a coordinate with a nought too many would
 * else make the frame a dot. A point or a thing is left out; the foot of a leg never is, because the leg is cut by it.
 * Our own choice.
 */
const FURTHEST = 10;
/** Half size of a drawing that has nothing to go by [mm]; our own choice. */
const LEAST_SIZE = 100;

/** What is drawn of a site; a cylinder without end and a plane are cut to the drawing when they are outlined. */
export function drawnSite({ source, laid }: SiteStudy): DrawnSite {
  const diameter = source.tube.outsideDiameter;
  const members = (laid.frame?.lines ?? []).map(({ name, closed, centreline }) => {
    const hidden = hiddenOf(
      source.wanted.members.find((member) => member.name === name),
      diameter,
    );
    return sampledMember({ name, closed, pieces: planPieces(centreline) }, hidden);
  });
  const legs = laid.legs.flatMap((leg) => (leg === null ? [] : [{ laid: leg, tube: legTube(leg) }]));
  const points = [...laid.points].map(([name, point]) => ({ name, point }));
  const things = laid.things.flatMap((thing) => (thing === null ? [] : [thing]));
  const tubes = [...members, ...legs.map(({ tube }) => tube)].flatMap(({ samples }) =>
    samples.map(({ point }) => point),
  );
  if (tubes.length === 0) {
    // nothing stands there yet: whatever is known is the drawing
    const all = [...points.map(({ point }) => point), ...things.map(({ body }) => body.at)];
    return { heart: heartOf(all), members, legs, things, points };
  }
  const heart = heartOf(tubes);
  const isNear = (point: Vector3): boolean => length(subtract(point, heart.middle)) < FURTHEST * heart.size;
  return {
    heart,
    members,
    legs,
    things: things.filter(({ body }) => isNear(nearestOf(body, heart.middle))),
    points: points.filter(({ point }) => isNear(point)),
  };
}

/** A leg as a straight tube from its foot point to its head. */
const legTube = ({ name, foot, head }: LaidLeg): SampledMember =>
  sampledMember({
    name,
    closed: false,
    pieces: [{ kind: 'straight', from: foot, to: head, length: length(subtract(head, foot)) }],
  });

/** The place of a thing that counts for how far off it is: of one without end the one nearest to the drawing. */
export function nearestOf(body: LaidThing['body'], to: Vector3): Vector3 {
  if (body.shape === 'point') return body.at;
  const off = subtract(to, body.at);
  if (body.shape === 'plane') return subtract(to, scale(body.normal, dot(off, body.normal)));
  const along = dot(off, body.axis);
  const { from, to: end } = body.ends ?? { from: along, to: along };
  return add(body.at, scale(body.axis, Math.min(end, Math.max(from, along))));
}

function heartOf(points: readonly Vector3[]): Heart {
  if (points.length === 0) return { middle: ORIGIN, size: LEAST_SIZE };
  const middleOn = (axis: 'x' | 'y' | 'z'): number => {
    let [low, high] = [Infinity, -Infinity];
    for (const point of points) [low, high] = [Math.min(low, point[axis]), Math.max(high, point[axis])];
    return (low + high) / 2;
  };
  const middle = { x: middleOn('x'), y: middleOn('y'), z: middleOn('z') };
  const furthest = points.reduce((most, point) => Math.max(most, length(subtract(point, middle))), 0);
  return { middle, size: Math.max(LEAST_SIZE, furthest) };
}
