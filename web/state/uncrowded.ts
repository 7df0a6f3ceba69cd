import type { FlatPoint } from '../../server/plan/view.ts';

/** About how large a written number is on the screen [px]: the width of one sign, and the height. */
const SIGN = { width: 9, height: 16 };

/** A text in the middle of a place on the screen [px]; `ring` is the radius of a ring round it, where it has one. */
export type Label = { readonly text: string; readonly at: FlatPoint; readonly ring?: number };

const wide = ({ text, ring = 0 }: Label): number => Math.max(SIGN.width * text.length, 2 * ring);
const high = ({ ring = 0 }: Label): number => Math.max(SIGN.height, 2 * ring);

/**
 * Those of the texts that stand clear of all before them, best first: a picture with many numbers shows as many as can
 * be read, and more of them as it comes nearer.
 */
export function uncrowded<One extends Label>(labels: readonly One[]): readonly One[] {
  const shown: One[] = [];
  for (const label of labels) {
    const clear = shown.every(
      (other) =>
        Math.abs(label.at[0] - other.at[0]) > (wide(label) + wide(other)) / 2 ||
        Math.abs(label.at[1] - other.at[1]) > (high(label) + high(other)) / 2,
    );
    if (clear) shown.push(label);
  }
  return shown;
}
