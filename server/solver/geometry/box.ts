import type { Vector3 } from './vector.ts';

/** A box with its sides along the axes: its lowest and its highest corner [mm]. */
export type Box = { readonly low: Vector3; readonly high: Vector3 };

/** The least box round points; undefined round none. */
export function boxRound(points: readonly Vector3[]): Box | undefined {
  const [first] = points;
  if (first === undefined) return undefined;
  const [low, high] = [{ ...first }, { ...first }];
  for (const { x, y, z } of points) {
    low.x = Math.min(low.x, x);
    low.y = Math.min(low.y, y);
    low.z = Math.min(low.z, z);
    high.x = Math.max(high.x, x);
    high.y = Math.max(high.y, y);
    high.z = Math.max(high.z, z);
  }
  return { low, high };
}

export const middleOfBox = ({ low, high }: Box): Vector3 => ({
  x: (low.x + high.x) / 2,
  y: (low.y + high.y) / 2,
  z: (low.z + high.z) / 2,
});

/** The middle of the least box round points; undefined for none. */
export function middleOf(points: readonly Vector3[]): Vector3 | undefined {
  const box = boxRound(points);
  return box === undefined ? undefined : middleOfBox(box);
}
