import type { Centreline } from '../geometry/centreline.ts';
import { finenessOf } from '../geometry/least-distance.ts';
import { leastGap } from '../geometry/least-gap.ts';
import { inverted, moved, turned, type RigidMotion } from '../geometry/rigid-motion.ts';
import { movedBar } from '../geometry/solid.ts';
import type { Post } from './corrected.ts';

/** So many times the distance from its axis that is asked for is far from a post; our own choice. */
const FAR = 3;

/** Whether a tube is so far from a post that no correction brings it too near: by how far it is off its surface [mm]. */
export const isFarFrom = ({ bar, keep }: Pick<Post, 'bar' | 'keep'>, distance: number): boolean =>
  distance + bar.radius >= FAR * (bar.radius + keep);

/**
 * Room that is left between a post and the tubes of a frame beyond what it asks for [mm]: negative where a tube comes
 * too near.
 *
 * @param lay the motion that lays the frame where it will stand
 * @returns undefined for a frame without tubes
 */
export function postRoom({ bar, keep }: Post, parts: readonly Centreline[], lay: RigidMotion): number | undefined {
  const back = inverted(lay);
  // the post is brought to the frame: that is the less to move
  const solid = movedBar(
    bar,
    (point) => moved(back, point),
    (way) => turned(back, way),
  );
  const length = parts.reduce((sum, line) => sum + line.length, 0);
  // one search over the pieces of all tubes: what is far from the post is left out at once
  const line = { pieces: parts.flatMap(({ pieces }) => pieces), length };
  const fine = finenessOf(2 * (bar.radius + keep), length);
  const gap = leastGap({ line, solid, lineTurns: null, solidTurns: null }, { fine });
  return gap === undefined ? undefined : gap.distance - keep;
}
