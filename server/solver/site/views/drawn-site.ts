import type { GapPlan } from '../../../plan/gap.ts';
import { boxRound, middleOfBox, type Box } from '../../geometry/box.ts';
import { planPieces } from '../../geometry/plan-pieces.ts';
import { heartOf } from '../../geometry/solid.ts';
import { length, ORIGIN, subtract, type Vector3 } from '../../geometry/vector.ts';
import { hiddenOf } from '../../views/hidden.ts';
import { sampledMember, type SampledMember } from '../../views/outline.ts';
import type { LaidLeg, LaidThing } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';

/** Where the drawing is [mm]. */
export type Extent = {
  /** Middle of the box round the frame and its legs, and how far they reach from it. */
  readonly middle: Vector3;
  readonly size: number;
  /** The box round them, the points near them and the least gaps, and a little beyond. */
  readonly box: Box;
  /** How far beyond. */
  readonly beyond: number;
};

/** Everything that is drawn, found once for all views, in the structure's axes. */
export type DrawnSite = {
  readonly extent: Extent;
  readonly members: readonly SampledMember[];
  readonly legs: readonly { readonly laid: LaidLeg; readonly tube: SampledMember }[];
  readonly things: readonly LaidThing[];
  readonly points: readonly { readonly name: string; readonly field: string; readonly point: Vector3 }[];
};

/**
 * Further from the frame than so many times its own reach nothing is drawn: a coordinate with a nought too many would
 * else make the frame a dot. A point or a thing is left out; the foot of a leg never is, because the leg is cut by it.
 * Our own choice.
 */
const FURTHEST = 10;
/** Half size of a drawing that has nothing to go by [mm]; our own choice. */
const LEAST_SIZE = 100;
/** What has no end is drawn so far beyond the frame, legs and points, as a share of their greatest side; our own choice. */
const BEYOND = 0.12;

/** What is drawn of a site; a cylinder without end and a plane are cut to the drawing when they are outlined. */
export function drawnSite({ source, laid }: SiteStudy, gaps: readonly GapPlan[]): DrawnSite {
  const diameter = source.tube.outsideDiameter;
  const members = (laid.frame?.lines ?? []).map(({ name, closed, centreline }) => {
    const hidden = hiddenOf(
      source.wanted.members.find((member) => member.name === name),
      diameter,
    );
    return sampledMember({ name, closed, pieces: planPieces(centreline) }, hidden);
  });
  const legs = laid.legs.flatMap((leg) => (leg === null ? [] : [{ laid: leg, tube: legTube(leg) }]));
  const points = source.site.points.flatMap(({ name }, index) => {
    const point = laid.points.get(name);
    return point === undefined ? [] : [{ name, field: `/site/points/${String(index)}`, point }];
  });
  const things = laid.things.flatMap((thing) => (thing === null ? [] : [thing]));
  const tubes = [...members, ...legs.map(({ tube }) => tube)].flatMap(({ samples }) =>
    samples.map(({ point }) => point),
  );
  if (tubes.length === 0) {
    // nothing stands there yet: whatever is known is the drawing
    const all = [...points.map(({ point }) => point), ...things.map(({ body }) => body.at)];
    return { extent: extentOf(all, all), members, legs, things, points };
  }
  const { middle, size } = extentOf(tubes, tubes);
  const isNear = (point: Vector3): boolean => length(subtract(point, middle)) < FURTHEST * size;
  const nearPoints = points.filter(({ point }) => isNear(point));
  const nearThings = things.filter(({ body }) => isNear(heartOf(body, middle)));
  const atGaps = gaps.flatMap(({ rows: [least] }) => (least === undefined ? [] : [least.onTube, least.onThing]));
  const round = [...tubes, ...nearPoints.map(({ point }) => point), ...atGaps.filter(isNear)];
  return { extent: extentOf(tubes, round), members, legs, things: nearThings, points: nearPoints };
}

/** A leg as a straight tube from its foot point to its head. */
const legTube = ({ name, foot, head }: LaidLeg): SampledMember =>
  sampledMember({
    name,
    closed: false,
    pieces: [{ kind: 'straight', from: foot, to: head, length: length(subtract(head, foot)) }],
  });

/** @param tubes what the drawing is about; @param round everything that it has to hold */
function extentOf(tubes: readonly Vector3[], round: readonly Vector3[]): Extent {
  const [inner, outer] = [boxRound(tubes), boxRound(round)];
  const middle = inner === undefined ? ORIGIN : middleOfBox(inner);
  const size = tubes.reduce((most, point) => Math.max(most, length(subtract(point, middle))), LEAST_SIZE);
  const { low, high } = outer ?? { low: middle, high: middle };
  const beyond = BEYOND * Math.max(2 * LEAST_SIZE, high.x - low.x, high.y - low.y, high.z - low.z);
  return {
    middle,
    size,
    beyond,
    box: {
      low: { x: low.x - beyond, y: low.y - beyond, z: low.z - beyond },
      high: { x: high.x + beyond, y: high.y + beyond, z: high.z + beyond },
    },
  };
}
