import { RADIANS } from '../geometry/angle.ts';
import type { PlanPiece } from '../../plan/frame.ts';
import type { FlatPoint, ViewMember } from '../../plan/view.ts';
import { add, cross, dot, rotate, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { project, rounded, type Projection } from './projection.ts';

/** Largest distance of a drawn chord from its arc [mm]: a quarter of a hairline at 1:10. */
const CHORD_HEIGHT = 0.3;
/** Most chords of one arc: where it fills a sheet they still stand less than 0.03 mm off it. Derived. */
const MOST_CHORDS = 360;
const TURN = 2 * Math.PI;

/** How much of a member's end is hidden in the tube it sits on [mm]. */
type Hidden = { readonly start: number; readonly finish: number };

/** A point of a centreline, the way the tube goes there, and how far along it is [mm]. */
type Sample = { readonly point: Vector3; readonly tangent: Vector3; readonly station: number };

/** A member's centreline as points, close enough to draw: found once, then drawn in every view. */
export type SampledMember = {
  readonly name: string;
  readonly closed: boolean;
  readonly samples: readonly Sample[];
};

/** Points along the centreline, close enough to draw, with the direction at each. */
function samples(pieces: readonly PlanPiece[]): Sample[] {
  let reached = 0;
  return pieces.flatMap((piece): Sample[] => {
    const begin = reached;
    reached += piece.length;
    if (piece.kind === 'straight') {
      const tangent = unit(subtract(piece.to, piece.from));
      return tangent === undefined
        ? []
        : [
            { point: piece.from, tangent, station: begin },
            { point: piece.to, tangent, station: reached },
          ];
    }
    const turned = piece.angle * RADIANS;
    // after a whole turn an arc lies on itself: the turns in between would draw the same line again
    const angle = turned > 2 * TURN ? TURN + (turned % TURN) : turned;
    const step = 2 * Math.acos(Math.max(0.5, 1 - CHORD_HEIGHT / piece.radius));
    const count = Math.min(MOST_CHORDS, Math.max(2, Math.ceil(angle / step)));
    const away = subtract(piece.from, piece.centre);
    return Array.from({ length: count + 1 }, (_, index) => {
      const arm = rotate(away, piece.normal, (angle * index) / count);
      // an arc so small that its centre rounds onto it has no direction to draw
      const tangent = unit(cross(piece.normal, arm));
      const station = begin + (piece.length * index) / count;
      return tangent === undefined ? [] : [{ point: add(piece.centre, arm), tangent, station }];
    }).flat();
  });
}

/** Takes a length off both ends, for ends that vanish in another tube. */
function shortened(all: readonly Sample[], hidden: Hidden): readonly Sample[] {
  const first = all[0];
  const last = all.at(-1);
  if (first === undefined || last === undefined || (hidden.start === 0 && hidden.finish === 0)) return all;
  return all.map((sample) => {
    const { point, tangent, station } = sample;
    if (sample === first) {
      return { point: add(point, scale(tangent, hidden.start)), tangent, station: station + hidden.start };
    }
    if (sample === last) {
      return { point: subtract(point, scale(tangent, hidden.finish)), tangent, station: station - hidden.finish };
    }
    return sample;
  });
}

/** A member as points, without what its ends hide in the tubes that they sit on. */
export const sampledMember = (
  member: { readonly name: string; readonly pieces: readonly PlanPiece[]; readonly closed: boolean },
  hidden: Hidden = { start: 0, finish: 0 },
): SampledMember => ({
  name: member.name,
  closed: member.closed,
  samples: shortened(samples(member.pieces), hidden),
});

/**
 * A tube as it is drawn: its two edges, square caps at free ends, and its centreline. The edges of a cylinder seen
 * square to the picture stand half a diameter either side of its projected axis; where the axis points at the eye the
 * edge is a circle, drawn as a polygon.
 */
export function outlineOf(member: SampledMember, view: Projection, outsideDiameter: number): ViewMember {
  const radius = outsideDiameter / 2;
  const left: FlatPoint[] = [];
  const right: FlatPoint[] = [];
  const edges: FlatPoint[][] = [];
  const centreline: FlatPoint[] = [];
  for (const { point, tangent } of member.samples) {
    const at = project(view, point);
    const [x, y] = at;
    centreline.push(rounded(at));
    const across = acrossOf(tangent, view);
    if (across === undefined) {
      edges.push(circle(at, radius));
      continue;
    }
    const [aside, above] = [across[0] * radius, across[1] * radius];
    left.push(rounded([x + aside, y + above]));
    right.push(rounded([x - aside, y - above]));
  }
  edges.push(left, right);
  if (!member.closed) edges.push(...caps(left, right));
  return { member: member.name, edges: edges.filter((edge) => edge.length > 1), centreline };
}

/** Square to the tube's axis on the drawing, to its left: a unit vector; undefined where the axis points at the eye. */
export function acrossOf(tangent: Vector3, view: Projection): FlatPoint | undefined {
  const [along, rise] = [dot(tangent, view.right), dot(tangent, view.up)];
  const size = Math.hypot(along, rise);
  return size < 1e-6 ? undefined : [-rise / size, along / size];
}

/** How far along the member each point of its centreline stands [mm], rounded as the points are. */
export const stationsOf = ({ samples: all }: SampledMember): number[] =>
  all.map(({ station }) => Math.round(station * 100) / 100);

/** The lines across both ends of a tube's edges. */
export function caps(left: readonly FlatPoint[], right: readonly FlatPoint[]): FlatPoint[][] {
  const pairs = [
    [left[0], right[0]],
    [left.at(-1), right.at(-1)],
  ];
  return pairs.flatMap(([a, b]) => (a === undefined || b === undefined ? [] : [[a, b]]));
}

/** A circle on the drawing, as a polygon. */
export const circle = ([x, y]: FlatPoint, radius: number): FlatPoint[] =>
  Array.from({ length: 25 }, (_, index) => {
    const turn = (index * Math.PI) / 12;
    return rounded([x + radius * Math.cos(turn), y + radius * Math.sin(turn)]);
  });
