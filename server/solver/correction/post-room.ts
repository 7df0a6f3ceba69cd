import { straightPiece, type Centreline } from '../geometry/centreline.ts';
import { finenessOf, leastDistance, stretches } from '../geometry/least-distance.ts';
import type { RigidMotion } from '../geometry/rigid-motion.ts';
import { add, dot, length, scale, subtract } from '../geometry/vector.ts';
import { movedLine } from '../geometry/moved-centreline.ts';
import type { Post } from './corrected.ts';

/**
 * Room that is left between a post and the tubes of a frame beyond what it asks for [mm]: negative where a tube comes
 * too near. The post goes on without end.
 *
 * @param lay the motion that lays the frame where it will stand
 * @returns undefined for a frame without tubes
 */
export function postRoom(post: Post, parts: readonly Centreline[], lay: RigidMotion): number | undefined {
  const lines = parts.map((part) => movedLine(lay, part));
  const longest = lines.reduce((sum, line) => sum + line.length, 0);
  const starts = lines.flatMap(({ pieces }) => pieces.slice(0, 1));
  const [start] = starts;
  if (start === undefined) return undefined;
  // no place of the frame is further than this from its first one: so much of the axis, both ways, is enough
  const away = subtract(start.start, post.at);
  const reach = longest + Math.max(...starts.map((piece) => length(subtract(piece.start, start.start))));
  const middle = add(post.at, scale(post.axis, dot(away, post.axis)));
  const axis = straightPiece({
    start: subtract(middle, scale(post.axis, reach)),
    direction: post.axis,
    length: 2 * reach,
  });
  const [along] = stretches(axis);
  if (along === undefined) return undefined;
  const fine = finenessOf(2 * post.least, longest);
  let least = length(away) + reach;
  for (const { pieces } of lines)
    for (const piece of pieces)
      for (const stretch of stretches(piece)) least = leastDistance(stretch, along, least, fine);
  return least - post.least;
}
