import type { FlatPoint } from '../../server/plan/view.ts';

/** About how large a written number is on the screen [px]: the width of one sign, and the height. */
const SIGN = { width: 9, height: 16 };

/**
 * Those of the texts that stand clear of all before them, best first: a picture with many numbers shows as many as can
 * be read, and more of them as it comes nearer.
 */
export function uncrowded<Label extends { readonly text: string; readonly at: FlatPoint }>(
  labels: readonly Label[],
): readonly Label[] {
  const shown: Label[] = [];
  for (const label of labels) {
    const clear = shown.every((other) => {
      const wide = (SIGN.width * (label.text.length + other.text.length)) / 2;
      return Math.abs(label.at[0] - other.at[0]) > wide || Math.abs(label.at[1] - other.at[1]) > SIGN.height;
    });
    if (clear) shown.push(label);
  }
  return shown;
}
