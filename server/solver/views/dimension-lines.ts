import type { FlatPoint, ViewDimension } from '../../plan/view.ts';
import { extraFor, type FrameGeometry } from '../frame/frame-geometry.ts';
import { length, subtract } from '../geometry/vector.ts';
import { project, rounded, type Projection } from './projection.ts';

/** What the dimension lines stand round. */
export type Bounds = readonly [left: number, bottom: number, right: number, top: number];

/** Distance of the first dimension line from the frame and between two lines, as a share of the frame's size. */
const FIRST = 0.08;
const NEXT = 0.07;
/** Sizes to check with that nobody types: they are drawn where somebody measured them, and would cross the others elsewhere. */
const MEASURED_ONLY = ['diagonal', 'width-at-middle', 'end-to-end', 'end-to-end-of'];
/** Share of a length from which on a picture shows it true. */
const TRUE_LENGTH = 0.999;

/**
 * Dimension lines for a frame's checks: horizontal ones above or below, upright ones left or right, whichever side is
 * nearer, stacked outwards. A size whose two ends fall on one point of the picture is left out.
 */
export function dimensionLines(
  frame: FrameGeometry,
  layer: ViewDimension['layer'],
  view: Projection,
  bounds: Bounds,
): ViewDimension[] {
  const [leftEdge, bottom, rightEdge, top] = bounds;
  const size = Math.max(rightEdge - leftEdge, top - bottom, 1);
  const used = { left: 0, right: 0, below: 0, above: 0 };
  return frame.checks.flatMap((check): ViewDimension[] => {
    if (check.field === '' && MEASURED_ONLY.includes(check.key)) return [];
    const centreFrom = project(view, check.from.point);
    const centreTo = project(view, check.to.point);
    const apart = Math.hypot(centreTo[0] - centreFrom[0], centreTo[1] - centreFrom[1]);
    const centre = length(subtract(check.to.point, check.from.point));
    // a size that follows from others is drawn where it is seen in its true length
    if (apart < 0.01 * size || (check.field === '' && apart < TRUE_LENGTH * centre)) return [];
    const whole = extraFor(check, check.reference);
    const value = centre + whole;
    const along: FlatPoint = [(centreTo[0] - centreFrom[0]) / apart, (centreTo[1] - centreFrom[1]) / apart];
    const atFrom = check.bothEnds ? whole / 2 : 0;
    const atTo = whole - atFrom;
    const from: FlatPoint = [centreFrom[0] - along[0] * atFrom, centreFrom[1] - along[1] * atFrom];
    const to: FlatPoint = [centreTo[0] + along[0] * atTo, centreTo[1] + along[1] * atTo];
    const middle: FlatPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    const level = Math.abs(along[0]) >= Math.abs(along[1]);
    const side = level
      ? middle[1] < (bottom + top) / 2
        ? 'below'
        : 'above'
      : middle[0] < (leftEdge + rightEdge) / 2
        ? 'left'
        : 'right';
    const off = (FIRST + NEXT * used[side]) * size;
    used[side] += 1;
    const across: FlatPoint = [-along[1], along[0]];
    const wants = { below: [0, -1], above: [0, 1], left: [-1, 0], right: [1, 0] }[side];
    const sense = across[0] * (wants[0] ?? 0) + across[1] * (wants[1] ?? 0) >= 0 ? 1 : -1;
    const edge = { below: bottom, above: top, left: leftEdge, right: rightEdge }[side];
    const stand = level ? Math.abs(edge - middle[1]) + off : Math.abs(edge - middle[0]) + off;
    const shifted = (at: FlatPoint): FlatPoint =>
      rounded([at[0] + across[0] * sense * stand, at[1] + across[1] * sense * stand]);
    return [
      {
        field: check.field,
        key: check.key,
        index: check.index,
        layer,
        from: rounded(from),
        to: rounded(to),
        line: [shifted(from), shifted(to)],
        value,
        unit: 'mm',
        radius: false,
      },
    ];
  });
}
