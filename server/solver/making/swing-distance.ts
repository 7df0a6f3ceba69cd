import type { MachinePoint } from './bent-part.ts';

/**
 * A body that stands still beside the die: from the plane of the tangent point `length` along the tube that is not yet
 * bent, from `near` to `far` off the die's axis, half its height up and down [mm]. The tube itself is such a body of no
 * width and height.
 */
export type StandingBox = { length: number; near: number; far: number; halfHeight: number };

/** A stretch of a swing [rad], with the cosine and sine of its end, which many points share. */
export type SwingRange = { from: number; to: number; cosine: number; sine: number };

/** Sets the end of a stretch of a swing. */
export function swingTo(swing: SwingRange, to: number): void {
  if (swing.to === to) return;
  swing.to = to;
  swing.cosine = Math.cos(to);
  swing.sine = Math.sin(to);
}

export const noSwing = (from: number): SwingRange => ({ from, to: 0, cosine: 1, sine: 0 });

const TURN = 2 * Math.PI;

/**
 * Least distance [mm] from a box at which a point passes that swings about the die's axis, 0 inside the box. Exact.
 *
 * The point keeps its radius r and its height, and its polar angle φ grows by the swing. In the plane the distance has
 * one lowest stretch of φ and rises from there to both sides until φ = −90°: the box lies in the quarter a ≥ 0, b > 0,
 * its point nearest to the axis is (0, near), its farthest (length, far). So the least is at the lowest stretch where
 * the swing comes by it, else at one end of the swing. Derived; checked against sampling.
 *
 * @param enough a distance from which on nobody wants to know more: then what is returned may be too small, but is no
 *   less than this
 * @param found gets the swing at which it is that near [rad]
 */
export function swingDistance(
  box: StandingBox,
  point: MachinePoint,
  swing: SwingRange,
  enough: number,
  found: { swing: number },
): number {
  const { length, near, far } = box;
  const { a, b } = point;
  const high = Math.max(0, Math.abs(point.z) - box.halfHeight);
  const radius = Math.sqrt(a * a + b * b);
  const corner = Math.sqrt(length * length + far * far);
  const gap = radius < near ? near - radius : radius > corner ? radius - corner : 0;
  const least = Math.sqrt(gap * gap + high * high);
  if (least >= enough) return least;

  const { from, to } = swing;
  const begins = from === 0 ? planar(box, a, b) : turnedTo(box, point, Math.cos(from), Math.sin(from));
  const ends = turnedTo(box, point, swing.cosine, swing.sine);
  const atEnds = Math.min(begins, ends);
  found.swing = begins <= ends ? from : to;
  if (atEnds <= gap) return Math.sqrt(atEnds * atEnds + high * high);
  let lowest = Math.PI / 2;
  if (radius > corner) lowest = Math.atan2(far, length);
  else if (radius >= near) lowest = Math.max(Math.asin(near / radius), Math.acos(Math.min(1, length / radius)));
  const ahead = wrapped(lowest - Math.atan2(b, a) - from);
  if (ahead > to - from) return Math.sqrt(atEnds * atEnds + high * high);
  found.swing = from + ahead;
  return least;
}

const wrapped = (angle: number): number => angle - TURN * Math.floor(angle / TURN);

const turnedTo = (box: StandingBox, { a, b }: MachinePoint, cosine: number, sine: number): number =>
  planar(box, a * cosine - b * sine, a * sine + b * cosine);

function planar({ length, near, far }: StandingBox, a: number, b: number): number {
  const along = a < 0 ? -a : a > length ? a - length : 0;
  const across = b < near ? near - b : b > far ? b - far : 0;
  return Math.sqrt(along * along + across * across);
}
