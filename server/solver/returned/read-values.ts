import { DEGREES } from '../geometry/angle.ts';
import { dot, cross, length, scale, subtract, unit } from '../geometry/vector.ts';
import type { Lines, Side } from './lines.ts';
import { pointOf, reachBeyond, type Place } from './tube-places.ts';

/**
 * From place to place [mm]; over the outside or inside the tube's own reach beyond each place is added or taken off.
 *
 * @returns undefined where the line runs along the tube, so that it has no outside to end at
 */
export function distanceBetween(
  from: Place,
  to: Place,
  lines: Lines,
  { side, radius }: { side: Side; radius: number },
): number | undefined {
  const [a, b] = [pointOf(from, lines), pointOf(to, lines)];
  if (a === undefined || b === undefined) return undefined;
  const way = subtract(b, a);
  if (side === 0) return length(way);
  const towards = unit(way);
  if (towards === undefined) return undefined;
  const near = reachBeyond(from, lines, scale(towards, -1), radius);
  const far = reachBeyond(to, lines, towards, radius);
  return near === undefined || far === undefined ? undefined : length(way) + side * (near + far);
}

/** Length of a straight, radius of an arc [mm], what it turns by, or its rotation since the arc before [degrees]. */
export function ofPiece(
  what: 'length' | 'radius' | 'angle' | 'rotation',
  at: { member: number; piece: number; before: number; value: number },
  lines: Lines,
): number | undefined {
  const pieces = lines[at.member]?.pieces;
  const piece = pieces?.[at.piece];
  if (piece === undefined) return undefined;
  if (what === 'length') return piece.length;
  if (piece.kind !== 'arc') return undefined;
  if (what === 'radius') return piece.radius;
  if (what === 'angle') return piece.angle * DEGREES;
  const before = pieces?.[at.before];
  if (before?.kind !== 'arc') return undefined;
  const { normal } = before;
  const turn = Math.atan2(dot(cross(normal, piece.normal), piece.direction), dot(normal, piece.normal)) * DEGREES;
  // whole turns are not seen: the one next to the reading is meant
  return turn + 360 * Math.round((at.value - turn) / 360);
}
