import type { FrameGeometry } from '../frame/frame-geometry.ts';

/** Length of the members of which bends are turned: all of each goes through the bender's hands [mm]. */
export const bentTube = (
  { members }: Pick<FrameGeometry, 'members'>,
  turns: readonly { readonly member: string }[],
): number =>
  members.reduce(
    (sum, { name, centreline }) => (turns.some(({ member }) => member === name) ? sum + centreline.length : sum),
    0,
  );
