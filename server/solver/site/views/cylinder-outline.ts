import type { FlatPoint } from '../../../plan/view.ts';
import type { Box } from '../../geometry/box.ts';
import type { RoundBar } from '../../geometry/solid.ts';
import { add, dot, scale, type Vector3 } from '../../geometry/vector.ts';
import { acrossOf, circle } from '../../views/outline.ts';
import { project, rounded, unitOnDrawing, type Projection } from '../../views/projection.ts';
import type { Extent } from './drawn-site.ts';

/** A typed end is drawn where it is unless it lies further beyond the drawing than this share of its size; our own choice. */
const LONG = 0.5;
/** How far a break mark goes either side of the end, as a share of the bar's width; our own choice. */
const BREAK = 0.3;
/** Along the break from edge to edge: the zigzag is in its middle; our own choice. */
const ZIGZAG = [0, 0.4, 0.45, 0.55, 0.6, 1];

/** One end of what is drawn of a bar: where along its axis [mm], and whether the bar goes on there. */
type DrawnEnd = { readonly along: number; readonly goesOn: boolean };

/**
 * A round bar on a drawing: its two edges and its ends, or a circle where one looks along it. Where it goes on beyond the
 * drawing it ends in a break mark, a thin line with a zigzag (ISO 128-2, from memory).
 */
export function cylinderLines(bar: RoundBar, view: Projection, extent: Extent): FlatPoint[][] {
  const [low, high] = endsOf(bar, extent);
  const across = acrossOf(bar.axis, view);
  const at = ({ along }: DrawnEnd): FlatPoint => project(view, add(bar.at, scale(bar.axis, along)));
  if (across === undefined) return [circle(at(low), bar.radius)];
  const [x, y] = across;
  const edge = (end: DrawnEnd, side: number): FlatPoint => {
    const [px, py] = at(end);
    return [px + side * bar.radius * x, py + side * bar.radius * y];
  };
  const ahead = unitOnDrawing(view, bar.axis);
  const endLine = (end: DrawnEnd): FlatPoint[] => {
    if (!end.goesOn) return [edge(end, 1), edge(end, -1)];
    return ZIGZAG.map((share, index) => {
      const [px, py] = edge(end, 1 - 2 * share);
      const off = BREAK * 2 * bar.radius * ([0, 0, 1, -1, 0, 0][index] ?? 0);
      return [px + off * ahead[0], py + off * ahead[1]];
    });
  };
  return [[edge(low, 1), edge(high, 1)], [edge(low, -1), edge(high, -1)], endLine(low), endLine(high)].map((line) =>
    line.map(rounded),
  );
}

/** Where a bar is drawn along its axis: from end to end, and only a little beyond the drawing where it goes on. */
function endsOf(bar: RoundBar, { box, beyond, size }: Extent): readonly [DrawnEnd, DrawnEnd] {
  const { from, to } = stretchIn(bar, box, beyond);
  const { ends } = bar;
  if (ends === null) {
    return [
      { along: from, goesOn: true },
      { along: to, goesOn: true },
    ];
  }
  const far = LONG * 2 * size;
  // one that lies beyond the drawing altogether keeps its nearer end
  const low = ends.from < from - far ? Math.max(ends.from, Math.min(from, ends.to - beyond)) : ends.from;
  const high = ends.to > to + far ? Math.min(ends.to, Math.max(to, ends.from + beyond)) : ends.to;
  return [
    { along: low, goesOn: low > ends.from },
    { along: high, goesOn: high < ends.to },
  ];
}

const AXES = ['x', 'y', 'z'] as const;

/** The stretch of a bar's axis within a box; of one that passes beside it, or by a corner, what lies beside the box [mm]. */
function stretchIn({ at, axis }: RoundBar, { low, high }: Box, least: number): { from: number; to: number } {
  let [from, to] = [-Infinity, Infinity];
  for (const one of AXES) {
    // an axis that runs along a side lies between both, or beside the box
    const [near, far] =
      axis[one] === 0
        ? wholeOrNone(at[one], low[one], high[one])
        : [(low[one] - at[one]) / axis[one], (high[one] - at[one]) / axis[one]];
    from = Math.max(from, Math.min(near, far));
    to = Math.min(to, Math.max(near, far));
  }
  if (to - from > least) return { from, to };
  const corners = [low.x, high.x].flatMap((x) =>
    [low.y, high.y].flatMap((y) => [low.z, high.z].map((z): Vector3 => ({ x, y, z }))),
  );
  const along = corners.map((corner) => dot(corner, axis) - dot(at, axis));
  return { from: Math.min(...along), to: Math.max(...along) };
}

const wholeOrNone = (value: number, low: number, high: number): readonly [number, number] =>
  value >= low && value <= high ? [-Infinity, Infinity] : [Infinity, Infinity];
