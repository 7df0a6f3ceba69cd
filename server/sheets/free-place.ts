import { around, textBox, textCorners, type Drawn, type Item, type Rectangle, type Spot, type Written } from './ink.ts';

/** Whether a piece of line passes through an upright rectangle (Liang and Barsky's clipping). */
export function crosses([x0, y0]: Spot, [x1, y1]: Spot, box: Rectangle): boolean {
  let enter = 0;
  let leave = 1;
  const sides: readonly (readonly [number, number])[] = [
    [x0 - x1, x0 - box.left],
    [x1 - x0, box.left + box.width - x0],
    [y0 - y1, y0 - box.top],
    [y1 - y0, box.top + box.height - y0],
  ];
  for (const [speed, room] of sides) {
    if (speed === 0) {
      if (room < 0) return false;
    } else if (speed < 0) enter = Math.max(enter, room / speed);
    else leave = Math.min(leave, room / speed);
  }
  return enter < leave;
}

export const overlap = (a: Rectangle, b: Rectangle): boolean =>
  a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height && b.top < a.top + a.height;

/** Turns places by an angle about the origin, so that a turned text's rectangle stands upright. */
function turner(degrees: number): (spot: Spot) => Spot {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ([x, y]) => [x * cos - y * sin, x * sin + y * cos];
}

/** A value stands this far from a line before or behind it [mm]. */
const CLEAR = 0.8;

/** How many lines and texts a text would meet. */
function meetings(text: Written, items: readonly Item[]): number {
  const box = textBox(text);
  const hull = {
    left: box.left - CLEAR,
    top: box.top - CLEAR,
    width: box.width + 2 * CLEAR,
    height: box.height + 2 * CLEAR,
  };
  const turn = turner(text.turn);
  const bare = around(textCorners(text).map(turn));
  const own = { ...bare, left: bare.left - CLEAR, width: bare.width + 2 * CLEAR };
  let count = 0;
  for (const item of items) {
    if (item.kind === 'text') {
      if (overlap(box, textBox(item))) count += 3;
    } else count += meets(item, own, hull, turn);
  }
  return count;
}

function meets(drawn: Drawn, own: Rectangle, hull: Rectangle, turn: (spot: Spot) => Spot): number {
  const points = drawn.closed && drawn.points[0] !== undefined ? [...drawn.points, drawn.points[0]] : drawn.points;
  for (let index = 0; index + 1 < points.length; index += 1) {
    const from = points[index];
    const to = points[index + 1];
    if (from === undefined || to === undefined || !crosses(from, to, hull)) continue;
    if (crosses(turn(from), turn(to), own)) return 1;
  }
  return 0;
}

const isInside = (box: Rectangle, area: Rectangle): boolean =>
  box.left >= area.left &&
  box.top >= area.top &&
  box.left + box.width <= area.left + area.width &&
  box.top + box.height <= area.top + area.height;

/** Whether a text meets nothing and stays inside the area. */
export const isFree = (text: Written, items: readonly Item[], area: Rectangle): boolean =>
  isInside(textBox(text), area) && meetings(text, items) === 0;

/** The first of the texts that meets nothing and stays inside the area; where there is none, the one that meets least. */
export function freest(candidates: readonly Written[], items: readonly Item[], area: Rectangle): Written | undefined {
  let best: Written | undefined;
  let least = Infinity;
  for (const candidate of candidates) {
    const count = meetings(candidate, items) + (isInside(textBox(candidate), area) ? 0 : 100);
    if (count === 0) return candidate;
    if (count < least) [best, least] = [candidate, count];
  }
  return best;
}
