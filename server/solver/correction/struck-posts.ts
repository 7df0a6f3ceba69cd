import type { Fixing } from '../../job/fixing.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { UNMOVED } from '../geometry/rigid-motion.ts';
import { unit } from '../geometry/vector.ts';
import type { Post } from './corrected.ts';
import { postRoom } from './post-room.ts';

/** A post that the wanted frame itself comes too near to, and the room that it lacks there [mm]. */
export type StruckPost = { readonly field: string; readonly name: string; readonly lacks: number };

/** The posts of a job as a correction keeps clear of them; one whose axis has no direction is none. */
export const postsOf = (fixing: Fixing, outsideDiameter: number): Post[] =>
  fixing.flatMap((point, index) => {
    const axis = point.fixing === 'post' ? unit(point.axis) : undefined;
    if (point.fixing !== 'post' || axis === undefined) return [];
    const least = (point.diameter + outsideDiameter) / 2 + point.clearance;
    return [{ field: `/fixing/${String(index)}`, name: point.name, at: point.at, axis, least }];
  });

/** Less room missing than this is rounding [mm]. */
const NOTHING = 1e-6;

/** Posts that no correction can keep clear of, since the wanted frame runs into them. */
export const struckPosts = (fixing: Fixing, wanted: FrameGeometry, outsideDiameter: number): StruckPost[] =>
  postsOf(fixing, outsideDiameter).flatMap((post) => {
    const lines = wanted.members.map(({ centreline }) => centreline);
    const room = postRoom(post, lines, UNMOVED) ?? 0;
    return room < -NOTHING ? [{ field: post.field, name: post.name, lacks: -room }] : [];
  });
