import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { bestMotion, turned, type PointPair } from '../geometry/rigid-motion.ts';
import { pieceEnd } from '../geometry/slice.ts';
import { scale, subtract, type Vector3 } from '../geometry/vector.ts';
import { laidSaddles } from './laid-saddles.ts';
import { withLine } from './with-line.ts';
import { movedLine } from '../geometry/moved-centreline.ts';
import type { SetFrom } from './saddle-seat.ts';

/** A shorter piece than this is none [mm]; rounding. */
const NOTHING = 1e-6;

/** Members of a frame that are bent otherwise, by name. */
export type Bent = ReadonlyMap<string, Centreline>;

/** Whether a tube that was bent otherwise still has every straight and every arc. */
export const canBe = ({ pieces }: Centreline): boolean => pieces.every((piece) => piece.length > -NOTHING);

/**
 * The members of a frame with some of them bent otherwise, piece for piece the same as they were drawn: straight members
 * between two others are cut to what is between those now, and every other member stands on its start, its directions
 * turned back onto those drawn as well as they go.
 *
 * @param bent the members that are bent otherwise; where they lie is of no account
 * @param setFrom what members that sit on others are set out from: the ends of those, or their bends
 */
export function madeMembers(drawn: FrameGeometry, bent: Bent, setFrom: SetFrom): readonly MemberGeometry[] {
  if (bent.size === 0) return drawn.members;
  const standing = drawn.members.map((member): MemberGeometry => {
    const line = bent.get(member.name);
    return line === undefined ? member : withLine(member, laidOn(line, member.centreline, drawn.planeNormal));
  });
  return laidSaddles(drawn.members, standing, setFrom);
}

/** A line moved so that it starts where the drawn one does and its pieces go the same ways as nearly as they can. */
function laidOn(line: Centreline, drawn: Centreline, planeNormal: Vector3 | null): Centreline {
  const pairs: PointPair[] = [];
  const pair = (from: Vector3, to: Vector3): void => {
    // both ways along, so that the middle of all is nothing and only the turn counts
    pairs.push({ from, to, weight: 1 }, { from: scale(from, -1), to: scale(to, -1), weight: 1 });
  };
  for (const [index, piece] of line.pieces.entries()) {
    const like = drawn.pieces[index];
    if (like === undefined) continue;
    pair(piece.direction, like.direction);
    pair(pieceEnd(piece).tangent, pieceEnd(like).tangent);
  }
  const turn = bestMotion(pairs, planeNormal);
  const first = placeAt(line, 0)?.point;
  const foot = placeAt(drawn, 0)?.point;
  if (first === undefined || foot === undefined) return line;
  return movedLine({ x: turn.x, y: turn.y, z: turn.z, shift: subtract(foot, turned(turn, first)) }, line);
}
