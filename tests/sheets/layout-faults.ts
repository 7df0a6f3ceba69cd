import { crosses, overlap } from '../../server/sheets/free-place.ts';
import { textBox, textCorners, type Drawn, type Item, type Rectangle, type Written } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';

export const texts = (items: readonly Item[]): Written[] => items.filter((item) => item.kind === 'text');
export const lines = (items: readonly Item[]): Drawn[] => items.filter((item) => item.kind === 'line');

/** A hair is not an overlap [mm]. */
const shrunk = (box: Rectangle, by = 0.05): Rectangle => ({
  left: box.left + by,
  top: box.top + by,
  width: box.width - 2 * by,
  height: box.height - 2 * by,
});

/** A printer's own margin [mm]: common practice, no source. */
const MARGIN = 4;

/** Whatever leaves the paper. */
export function outside(page: Page): string[] {
  return page.items.flatMap((item) => {
    const points = item.kind === 'text' ? textCorners(item) : item.points;
    const inside = points.every(
      ([x, y]) => x >= MARGIN && x <= page.width - MARGIN && y >= MARGIN && y <= page.height - MARGIN,
    );
    return inside ? [] : [item.kind === 'text' ? item.text : item.role];
  });
}

/** Pairs of texts that lie over one another. */
export function covered(page: Page): string[] {
  const written = texts(page.items).map((text) => ({ text: text.text, box: shrunk(textBox(text)) }));
  return written.flatMap((one, index) =>
    written
      .slice(index + 1)
      .filter((other) => overlap(one.box, other.box))
      .map((other) => `${one.text} / ${other.text}`),
  );
}

/** Texts that lie or stand upright with a line through them. */
export function crossed(page: Page): string[] {
  return texts(page.items).flatMap((text) => {
    const box = shrunk(textBox(text), 0.15);
    return lines(page.items)
      .filter(({ role }) => role !== 'hatch')
      .filter(({ points, closed }) => {
        const whole = closed ? [...points, points[0]!] : points;
        return whole.some((point, index) => index > 0 && crosses(whole[index - 1]!, point, box));
      })
      .map(({ role }) => `${text.text} / ${role}`);
  });
}
