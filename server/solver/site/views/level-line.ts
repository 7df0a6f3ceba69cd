import type { SiteView } from '../../../plan/site-view.ts';
import type { FlatPoint } from '../../../plan/view.ts';
import { dot, type Vector3 } from '../../geometry/vector.ts';
import type { Bounds } from '../../views/dimension-lines.ts';
import { rounded, type Projection } from '../../views/projection.ts';

/** Where up points at the reader nearly, within this sine of it, what is level has no line; our own choice. */
const FROM_ABOVE = 0.5;

/**
 * What is level now, as a line through the middle of the drawing from edge to edge: the trace of a horizontal plane on a
 * plane square to the eye.
 *
 * @param up by gravity, in the structure's axes
 * @returns null where one looks down on what is level
 */
export function levelLine(up: Vector3, view: Projection, [left, bottom, right, top]: Bounds): SiteView['level'] {
  const [run, rise] = [dot(up, view.up), -dot(up, view.right)];
  if (Math.hypot(run, rise) < FROM_ABOVE) return null;
  const middle: FlatPoint = [(left + right) / 2, (bottom + top) / 2];
  const [wide, high] = [(right - left) / 2, (top - bottom) / 2];
  // as far as the nearer pair of edges lets it
  const reach = Math.min(run === 0 ? Infinity : wide / Math.abs(run), rise === 0 ? Infinity : high / Math.abs(rise));
  const at = (sign: 1 | -1): FlatPoint => {
    const [x, y] = rounded([middle[0] + sign * run * reach, middle[1] + sign * rise * reach]);
    // rounding of a middle may lead over an edge by a last digit
    return [Math.min(right, Math.max(left, x)), Math.min(top, Math.max(bottom, y))];
  };
  return [at(-1), at(1)];
}
