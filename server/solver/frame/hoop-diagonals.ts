import { add, length, scale, subtract, type Vector3 } from '../geometry/vector.ts';
import type { Check, Spot } from './frame-geometry.ts';

type Leg = { readonly foot: Spot; readonly corner: Spot };

/**
 * Both diagonals of a hoop: from the left foot to the right corner, and from the right foot to the left one. Over the
 * outside they run from the outer edge of the foot to the outer corner, inside from the inner edge to the inner corner;
 * how much longer that is follows from the four points. Derived.
 *
 * @param tube lean of the legs [rad], outside diameter, and what a leg is longer over the outside and inside [mm]
 */
export function hoopDiagonals(
  legs: { readonly left: Leg; readonly right: Leg },
  tube: { lean: number; outsideDiameter: number; outerExtra: number; innerExtra: number },
  reference: Check['reference'],
): Check[] {
  const { lean, outsideDiameter } = tube;
  // towards the left, square to the left leg, and up it; the right leg is its mirror image
  const out = (side: 1 | -1): Vector3 => ({ x: -side * Math.cos(lean), y: -Math.sin(lean), z: 0 });
  const up = (side: 1 | -1): Vector3 => ({ x: -side * Math.sin(lean), y: Math.cos(lean), z: 0 });
  const diagonal = (index: number, from: Spot, to: Spot, fromLeft: 1 | -1): Check => {
    const centre = length(subtract(to.point, from.point));
    const longer = (off: number, along: number): number => {
      const foot = add(from.point, scale(out(fromLeft), off));
      const beside = add(to.point, scale(out(fromLeft === 1 ? -1 : 1), off));
      return length(subtract(add(beside, scale(up(fromLeft === 1 ? -1 : 1), along)), foot)) - centre;
    };
    return {
      key: 'diagonal',
      index,
      field: '',
      reference,
      outsideExtra: longer(outsideDiameter / 2, tube.outerExtra),
      insideExtra: longer(-outsideDiameter / 2, tube.innerExtra),
      bothEnds: false,
      from,
      to,
    };
  };
  return [diagonal(1, legs.left.foot, legs.right.corner, 1), diagonal(2, legs.right.foot, legs.left.corner, -1)];
}
