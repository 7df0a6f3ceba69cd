import type { Check, FrameGeometry, Spot } from '../../frame/frame-geometry.ts';
import { spotAt } from '../../frame/die-corners.ts';
import { pieceEnd } from '../../geometry/slice.ts';
import { cross, dot, length, ORIGIN, scale, subtract } from '../../geometry/vector.ts';
import { middleOf } from '../../joints/outside.ts';
import { frameResponse, type Strain } from './frame-response.ts';
import type { PlacedWeld } from './placed-welds.ts';
import { sizePulls } from './size-pulls.ts';
import { standingOff } from './standing-off.ts';
import { gyration, type FrameScale } from './stretch-flexibility.ts';
import { tubeGraph } from './tube-graph.ts';

/**
 * What one weld does to the frame, for a turn of 1 rad towards its outside and its top generator, and for 1 mm of
 * shrinkage.
 */
export type WeldInfluence = {
  readonly weld: PlacedWeld;
  /** On each check [mm]. */
  readonly outside: readonly number[];
  readonly top: readonly number[];
  readonly shrinkage: readonly number[];
  /** How far ends, corners and welds of the frame then stand off, laid back on it: x, y, z of each [mm]. */
  readonly outsideOff: readonly number[];
  readonly topOff: readonly number[];
};

export type FrameInfluences = { readonly checks: readonly Check[]; readonly welds: readonly WeldInfluence[] };

/** Smaller than this share of the frame's size an influence is rounding. */
const ROUNDING = 1e-9;

/**
 * How sizes and shape of a tacked frame follow its welds, in the small. Checks between parts that do not hang together
 * are left out, for nothing carries one weld's pull across. Without a weld there is nothing to look at.
 */
export function weldInfluences(
  wanted: FrameGeometry,
  tube: { readonly outsideDiameter: number; readonly wall: number },
  welds: readonly PlacedWeld[],
): FrameInfluences {
  if (welds.length === 0) return { checks: [], welds: [] };
  const { members } = wanted;
  const frame = scaleOf(wanted, tube);
  const sizes = sizePulls(wanted);
  const ends = members.flatMap((member) =>
    member.closed ? [] : [spotAt(member, 0), spotAt(member, member.centreline.length)],
  );
  // a kink shows at its own weld too: a frame folded across its middle has its ends in one plane still
  const shape: Spot[] = [...ends, ...wanted.corners, ...welds];
  const graph = tubeGraph(members, [...sizes.flatMap(({ pulls }) => pulls.map(({ spot }) => spot)), ...shape]);
  const strains: Strain[] = [];
  const placed = welds.flatMap((weld) => {
    const stretch = graph.stretchAt(weld);
    if (stretch === undefined) return [];
    const { point, tangent } = weld;
    // the side that is welded last grows shorter: what is beyond turns about t × n
    strains.push({ stretch, point, move: ORIGIN, turn: cross(tangent, weld.outside) });
    strains.push({ stretch, point, move: ORIGIN, turn: cross(tangent, weld.top) });
    strains.push({ stretch, point, move: scale(tangent, -1), turn: ORIGIN });
    return [weld];
  });
  const response = frameResponse(members, graph, frame, strains);
  const held = (spot: Spot) => ({ spot, vertex: graph.vertexAt(spot) ?? -1 });
  const known = sizes.flatMap(({ check, pulls }) => {
    const on = pulls.map(({ spot, along }) => ({ ...held(spot), along }));
    const [first] = on;
    const together = on.every(({ vertex }) => response.bodyOf(vertex) === response.bodyOf(first?.vertex ?? -1));
    return together ? [{ check, on }] : [];
  });
  const bodies = byBody(shape.map(held), response.bodyOf);
  const change = (strain: number, least: number): number[] =>
    known.map(({ on }) => {
      const sum = on.reduce(
        (total, { spot, vertex, along }) => total + dot(along, response.moveAt(vertex, spot.point, strain)),
        0,
      );
      return Math.abs(sum) < least ? 0 : sum;
    });
  const off = (strain: number): number[] =>
    bodies.flatMap(({ points, laid }) =>
      laid(points.flatMap(({ spot, vertex }) => coordinates(response.moveAt(vertex, spot.point, strain)))),
    );
  return {
    checks: known.map(({ check }) => check),
    welds: placed.map((weld, index) => ({
      weld,
      outside: change(3 * index, ROUNDING * frame.size),
      top: change(3 * index + 1, ROUNDING * frame.size),
      shrinkage: change(3 * index + 2, ROUNDING),
      outsideOff: off(3 * index),
      topOff: off(3 * index + 1),
    })),
  };
}

type Held = { readonly spot: Spot; readonly vertex: number };

const coordinates = ({ x, y, z }: Spot['point']): number[] => [x, y, z];

/** Points of each connected part, and how their moves are laid back. */
function byBody(points: readonly Held[], bodyOf: (vertex: number) => number) {
  const bodies = new Map<number, Held[]>();
  for (const point of points) {
    const body = bodyOf(point.vertex);
    bodies.set(body, [...(bodies.get(body) ?? []), point]);
  }
  return [...bodies.values()].map((own) => ({
    points: own,
    laid: standingOff(own.flatMap(({ spot }) => coordinates(spot.point))),
  }));
}

function scaleOf({ members }: FrameGeometry, tube: { outsideDiameter: number; wall: number }): FrameScale {
  const middle = middleOf(members) ?? ORIGIN;
  const far = members
    .flatMap(({ centreline }) => centreline.pieces.flatMap((piece) => [piece.start, pieceEnd(piece).point]))
    .reduce((most, point) => Math.max(most, length(subtract(point, middle))), 0);
  const size = far > 0 ? far : 1;
  return { middle, size, thickness: gyration(tube.outsideDiameter, tube.wall) / size ** 2 };
}
