import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import { arcPiece, placeOn, straightPiece, type Centreline, type Piece } from '../../geometry/centreline.ts';
import { movedPiece } from '../../geometry/moved-centreline.ts';
import { moved, turned, UNMOVED, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { partOf, pieceStations } from '../../geometry/slice.ts';
import { add, angleBetween, cross, dot, length, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { FrameGraph } from './frame-graph.ts';
import { bodiesOf, feetOf } from './spliced-frame.ts';
import type { SolvedSplice } from './solve-splice.ts';

/** Enough to stand on one side of a place [mm]. */
const HAIR = 1e-6;

/**
 * The lines of a spliced frame, piece for piece those of the frame before, for taking its sizes as a tape does: a piece
 * that was cut is a straight from end to end, or an arc through its two ends and what is now its middle. Members end at
 * their feet.
 */
export function splicedLines(splice: SolvedSplice, frame: FrameGeometry, graph: FrameGraph): Centreline[] {
  const bodies = bodiesOf(splice, graph);
  return frame.members.map(({ name, centreline }, member): Centreline => {
    const motionAt = (station: number): RigidMotion => splice.motions[bodies.at(member, station)] ?? UNMOVED;
    const stations = pieceStations(centreline);
    const { low, high } = feetOf(frame, name, centreline.length);
    const last = centreline.pieces.length - 1;
    const pieces = centreline.pieces.map((piece, index): Piece => {
      const begin = index === 0 ? low : (stations[index] ?? 0);
      const end = index === last ? high : (stations[index + 1] ?? 0);
      const own = partOf(piece, begin - (stations[index] ?? 0), end - begin);
      const joints = splice.joints
        .filter(({ joint, middle }) => joint.place.stretch.member === member && middle > begin && middle < end)
        .sort((a, b) => a.middle - b.middle);
      if (joints.length === 0) return movedPiece(motionAt(begin + HAIR), own);
      const from = moved(motionAt(begin + HAIR), own.start);
      const to = moved(motionAt(end - HAIR), placeOn(own, own.length).point);
      const direction = turned(motionAt(begin + HAIR), own.direction);
      const chord = subtract(to, from);
      const straight = straightPiece({ start: from, direction: unit(chord) ?? direction, length: length(chord) });
      if (own.kind === 'straight') return straight;
      // the middle of what is left: old tube and new, from both ends alike
      const parts = [begin, ...joints.map(({ middle, sides }) => middle + sides.half)].map((start, part) => {
        const next = joints[part];
        return {
          start,
          old: (next === undefined ? end : next.middle - next.sides.half) - start,
          added: next === undefined || next.sides.letIn === null ? 0 : length(next.sides.gap),
        };
      });
      let left = parts.reduce((sum, { old, added }) => sum + old + added, 0) / 2;
      let middle = add(from, scale(chord, 1 / 2));
      for (const { start, old, added } of parts) {
        if (left <= old) {
          middle = moved(motionAt(start + old / 2), placeOn(piece, start + left - (stations[index] ?? 0)).point);
          break;
        }
        if (left <= old + added) {
          const before = moved(motionAt(start + old / 2), placeOn(piece, start + old - (stations[index] ?? 0)).point);
          middle = add(before, scale(unit(chord) ?? direction, left - old));
          break;
        }
        left -= old + added;
      }
      return arcThrough(from, middle, to, own.made) ?? straight;
    });
    return { pieces, length: pieces.reduce((sum, piece) => sum + piece.length, 0) };
  });
}

/** The arc through three points; undefined where they lie on one line. */
function arcThrough(from: Vector3, middle: Vector3, to: Vector3, made: 'die' | 'rolled'): Piece | undefined {
  const [a, b] = [subtract(middle, from), subtract(to, from)];
  const axis = cross(a, b);
  const normal = unit(axis);
  if (normal === undefined || length(axis) < HAIR * length(b)) return undefined;
  // centre − from = (|a|² b × (a × b)… ) / (2 |a × b|²), the circumcentre of a triangle
  const out = add(scale(cross(b, axis), dot(a, a)), scale(cross(axis, a), dot(b, b)));
  const toCentre = scale(out, 1 / (2 * dot(axis, axis)));
  const radius = length(toCentre);
  const direction = unit(cross(toCentre, normal));
  if (direction === undefined) return undefined;
  const half = angleBetween(scale(toCentre, -1), subtract(subtract(to, from), toCentre));
  const beyond = dot(direction, b) < 0;
  return arcPiece({ start: from, direction, normal, radius, angle: beyond ? 2 * Math.PI - half : half, made });
}
