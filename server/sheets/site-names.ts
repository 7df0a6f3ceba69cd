import { isFree, crosses } from './free-place.ts';
import { HEIGHTS, STROKES, line, textBox, write, type Item, type Rectangle, type Spot, type Written } from './ink.ts';

/** Something with a name: what it says and the place that it belongs to. */
export type Named = { readonly text: string; readonly at: Spot; readonly bold: boolean };

/** Ways and distances at which a name is tried, the nearest first [degrees from the right, mm]. */
const WAYS = [-30, 30, -150, 150, 0, 180, -90, 90, -60, 60, -120, 120] as const;
const DISTANCES = [2.5, 4.5, 7, 10, 14, 18] as const;

/** A name that stands further off than this has a line to its place [mm]. */
const NEAR = 3;

/** The line to a name ends this far before its place and its letters [mm]. */
const CLEAR = 0.9;

/** Names near their places, clear of everything drawn; one that finds no room is left out: the tables have it too. */
export function siteNames(names: readonly Named[], drawn: readonly Item[], area: Rectangle): Item[] {
  const placed: Item[] = [];
  for (const name of names) placed.push(...placeName(name, drawn, placed, area));
  return placed;
}

function placeName(
  { text, at, bold }: Named,
  drawn: readonly Item[],
  placed: readonly Item[],
  area: Rectangle,
): Item[] {
  const height = bold ? HEIGHTS.text : 2.1;
  for (const distance of DISTANCES) {
    for (const way of WAYS) {
      const angle = (way * Math.PI) / 180;
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      const end: Spot = [at[0] + dx * distance, at[1] + dy * distance];
      const said = nameText(text, end, [dx, dy], { height, weight: bold ? 600 : 400 });
      if (!isFree(said, [...drawn, ...placed], area)) continue;
      if (distance <= NEAR) return [said];
      const from: Spot = [at[0] + dx * CLEAR, at[1] + dy * CLEAR];
      if (crossesText(from, end, placed)) continue;
      return [line('mark', [from, end], STROKES.thin), said];
    }
  }
  return [];
}

/** The name begins where its line ends. */
function nameText(text: string, [x, y]: Spot, [dx, dy]: Spot, how: { height: number; weight: 400 | 600 }): Written {
  const align = dx > 0.3 ? 'left' : dx < -0.3 ? 'right' : 'middle';
  const aside = align === 'left' ? CLEAR : align === 'right' ? -CLEAR : 0;
  const down = Math.abs(dx) > 0.3 ? how.height / 2 : dy > 0 ? how.height + CLEAR : -CLEAR;
  return write([x + aside, y + down], text, { ...how, align });
}

const crossesText = (from: Spot, to: Spot, placed: readonly Item[]): boolean =>
  placed.some((item) => item.kind === 'text' && crosses(from, to, textBox(item)));
