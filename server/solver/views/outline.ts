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
export type Hidden = { readonly start: number; readonly finish: number };

type Sample = { readonly point: Vector3; readonly tangent: Vector3 };

/** Points along the centreline, close enough to draw, with the direction at each. */
function samples(pieces: readonly PlanPiece[]): Sample[] {
  return pieces.flatMap((piece): Sample[] => {
    if (piece.kind === 'straight') {
      const tangent = unit(subtract(piece.to, piece.from));
      return tangent === undefined
        ? []
        : [
            { point: piece.from, tangent },
            { point: piece.to, tangent },
          ];
    }
    const turned = (piece.angle * Math.PI) / 180;
    // after a whole turn an arc lies on itself: the turns in between would draw the same line again
    const angle = turned > 2 * TURN ? TURN + (turned % TURN) : turned;
    const step = 2 * Math.acos(Math.max(0.5, 1 - CHORD_HEIGHT / piece.radius));
    const count = Math.min(MOST_CHORDS, Math.max(2, Math.ceil(angle / step)));
    const away = subtract(piece.from, piece.centre);
    return Array.from({ length: count + 1 }, (_, index) => {
      const arm = rotate(away, piece.normal, (angle * index) / count);
      // an arc so small that its centre rounds onto it has no direction to draw
      const tangent = unit(cross(piece.normal, arm));
      return tangent === undefined ? [] : [{ point: add(piece.centre, arm), tangent }];
    }).flat();
  });
}

/** Takes a length off both ends, for ends that vanish in another tube. */
function shortened(all: readonly Sample[], hidden: Hidden): Sample[] {
  const first = all[0];
  const last = all.at(-1);
  if (first === undefined || last === undefined) return [];
  return all.map((sample) => {
    if (sample === first) return { ...sample, point: add(sample.point, scale(sample.tangent, hidden.start)) };
    if (sample === last) return { ...sample, point: subtract(sample.point, scale(sample.tangent, hidden.finish)) };
    return sample;
  });
}

/**
 * A tube as it is drawn: its two edges, square caps at free ends, and its centreline. The edges of a cylinder seen
 * square to the picture stand half a diameter either side of its projected axis; where the axis points at the eye the
 * edge is a circle, drawn as a polygon.
 */
export function outlineOf(
  member: { name: string; pieces: readonly PlanPiece[]; closed: boolean },
  view: Projection,
  outsideDiameter: number,
  hidden: Hidden = { start: 0, finish: 0 },
): ViewMember {
  const all = shortened(samples(member.pieces), hidden);
  const radius = outsideDiameter / 2;
  const left: FlatPoint[] = [];
  const right: FlatPoint[] = [];
  const edges: FlatPoint[][] = [];
  for (const sample of all) {
    const [x, y] = project(view, sample.point);
    const along: FlatPoint = [dot(sample.tangent, view.right), dot(sample.tangent, view.up)];
    const size = Math.hypot(along[0], along[1]);
    if (size < 1e-6) {
      edges.push(circle([x, y], radius));
      continue;
    }
    const across: FlatPoint = [(-along[1] / size) * radius, (along[0] / size) * radius];
    left.push(rounded([x + across[0], y + across[1]]));
    right.push(rounded([x - across[0], y - across[1]]));
  }
  edges.push(left, right);
  if (!member.closed) edges.push(...caps(left, right));
  return {
    member: member.name,
    edges: edges.filter((edge) => edge.length > 1),
    centreline: all.map((sample) => rounded(project(view, sample.point))),
  };
}

function caps(left: readonly FlatPoint[], right: readonly FlatPoint[]): FlatPoint[][] {
  const pairs = [
    [left[0], right[0]],
    [left.at(-1), right.at(-1)],
  ];
  return pairs.flatMap(([a, b]) => (a === undefined || b === undefined ? [] : [[a, b]]));
}

const circle = ([x, y]: FlatPoint, radius: number): FlatPoint[] =>
  Array.from({ length: 25 }, (_, index) => {
    const turn = (index * Math.PI) / 12;
    return rounded([x + radius * Math.cos(turn), y + radius * Math.sin(turn)]);
  });
