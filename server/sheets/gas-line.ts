import { arrowhead } from './dimension.ts';
import { STROKES, line, type Drawn, type Spot } from './ink.ts';
import { dot } from './marks.ts';

/** From dot to dot, from arrow to arrow, and the radius of a dot [mm on paper]. */
const PITCH = 2.2;
const ARROWS = 34;
const RADIUS = 0.32;

/** Half the size of a cross where no gas passes [mm]. */
const CROSS = 0.8;

type Place = { readonly at: Spot; readonly along: Spot };

/** Length of a line [mm]. */
export const lengthOf = (points: readonly Spot[]): number =>
  points.reduce((sum, point, index) => {
    const before = points[index - 1];
    return before === undefined ? sum : sum + Math.hypot(point[0] - before[0], point[1] - before[1]);
  }, 0);

/** Places along a line, `pitch` apart and half of that from its ends [mm]; at least one where the line has a length. */
export function placesAlong(points: readonly Spot[], pitch: number): Place[] {
  const length = lengthOf(points);
  if (!(length > 0)) return [];
  const count = Math.max(1, Math.floor(length / pitch + 1e-9));
  const step = length / count;
  const places: Place[] = [];
  let [passed, next] = [0, step / 2];
  for (const [index, to] of points.entries()) {
    const from = points[index - 1];
    if (from === undefined) continue;
    const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
    for (; size > 0 && next <= passed + size && places.length < count; next += step) {
      const along: Spot = [(to[0] - from[0]) / size, (to[1] - from[1]) / size];
      const by = next - passed;
      places.push({ at: [from[0] + along[0] * by, from[1] + along[1] * by], along });
    }
    passed += size;
  }
  return places;
}

/** The way of the gas: a row of small dots, with arrows the way that it runs. */
export function gasDots(points: readonly Spot[]): Drawn[] {
  const arrows = placesAlong(points, ARROWS);
  const near = ({ at: [x, y] }: Place): boolean => arrows.some(({ at }) => Math.hypot(at[0] - x, at[1] - y) < PITCH);
  return [
    ...placesAlong(points, PITCH)
      .filter((place) => !near(place))
      .map(({ at }) => dot(at, RADIUS, 'gas')),
    ...arrows.map(({ at, along: [x, y] }) => ({
      ...arrowhead([at[0] + 1.2 * x, at[1] + 1.2 * y], { x, y }),
      role: 'gas' as const,
    })),
  ];
}

/** Bore that no gas runs through: a row of crosses. */
export const gasCrosses = (points: readonly Spot[]): Drawn[] =>
  placesAlong(points, 2 * PITCH).flatMap(({ at: [x, y] }) =>
    [1, -1].map((sense) =>
      line(
        'gas',
        [
          [x - CROSS, y - sense * CROSS],
          [x + CROSS, y + sense * CROSS],
        ],
        STROKES.narrow,
      ),
    ),
  );
