import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { UNMOVED } from '../geometry/rigid-motion.ts';
import type { Post } from './corrected.ts';
import { postRoom } from './post-room.ts';

/** Less room missing than this is rounding [mm]. */
const NOTHING = 1e-6;

/**
 * Posts that a correction keeps clear of, and what there is to say of those that none can keep clear of since the wanted
 * frame runs into them: no correction is bent out of shape for these. Said is where a post stands as typed; what swings
 * into the frame is a matter of the gaps of the site.
 */
export function sortedPosts(
  posts: readonly Post[],
  wanted: Pick<FrameGeometry, 'members'>,
): { clear: Post[]; struck: { readonly field: string; readonly name: string; readonly lacks: number }[] } {
  const lines = wanted.members.map(({ centreline }) => centreline);
  const rooms = posts.map((post) => ({ ...post, spare: postRoom(post, lines, UNMOVED)?.room ?? 0 }));
  const isStruck = ({ spare }: { readonly spare: number }): boolean => spare < -NOTHING;
  return {
    clear: rooms.filter((post) => !isStruck(post)),
    struck: rooms.flatMap((post) =>
      isStruck(post) && post.atRest ? [{ field: post.field, name: post.name, lacks: -post.spare }] : [],
    ),
  };
}
