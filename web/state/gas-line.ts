import type { FlatPoint } from '../../server/plan/view.ts';
import { arrowhead } from './screen.ts';

/** A place on a line, and the unit vector along it there; both on the screen [px]. */
export type PlaceOnLine = { readonly at: FlatPoint; readonly along: FlatPoint };

/** Places along a line on the screen, so far apart [px]; the first half as far from its start. */
export function placesAlong(points: readonly FlatPoint[], spacing: number): readonly PlaceOnLine[] {
  const places: PlaceOnLine[] = [];
  if (!(spacing > 0)) return places;
  let next = spacing / 2;
  let run = 0;
  points.forEach((to, index) => {
    const from = points[index - 1];
    if (from === undefined) return;
    const [x, y] = [to[0] - from[0], to[1] - from[1]];
    const size = Math.hypot(x, y);
    for (; next <= run + size && size > 0; next += spacing) {
      const share = (next - run) / size;
      places.push({ at: [from[0] + x * share, from[1] + y * share], along: [x / size, y / size] });
    }
    run += size;
  });
  return places;
}

/** Between two arrowheads on a way of the gas [px], so that ways that begin alike show alike; a short one has one. */
const ARROWS = 140;

const lengthOf = (points: readonly FlatPoint[]): number =>
  points.reduce((sum, [x, y], index) => {
    const before = points[index - 1];
    return before === undefined ? 0 : sum + Math.hypot(x - before[0], y - before[1]);
  }, 0);

/** Arrowheads along a way of the gas, for the d of an SVG path. */
export function arrowsAlong(points: readonly FlatPoint[]): string {
  return placesAlong(points, Math.min(ARROWS, lengthOf(points)))
    .map(({ at: [x, y], along }) => arrowhead([x + along[0] * 6, y + along[1] * 6], [x - along[0], y - along[1]]))
    .join('');
}

/** Small crosses along bore that no gas runs through, for the d of an SVG path. */
export const crossesAlong = (points: readonly FlatPoint[], spacing: number, half: number): string =>
  placesAlong(points, spacing)
    .map(({ at: [x, y] }) => {
      const [left, right, top, bottom] = [x - half, x + half, y - half, y + half].map((value) => value.toFixed(1));
      return `M${left ?? ''} ${top ?? ''}L${right ?? ''} ${bottom ?? ''}M${left ?? ''} ${bottom ?? ''}L${right ?? ''} ${top ?? ''}`;
    })
    .join('');
