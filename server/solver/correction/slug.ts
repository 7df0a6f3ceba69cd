/**
 * The four generators of a tube that a cut is marked on, by their angle from the outside of the curve [degrees].
 * On a straight the outside is the side that the frame calls outside.
 */
export const GENERATORS = [
  { key: 'outside', angle: 0 },
  { key: 'top', angle: 90 },
  { key: 'inside', angle: 180 },
  { key: 'bottom', angle: 270 },
] as const;

/**
 * How far a square ring at a station of an arc lies from the arc's start, along a generator [mm]: the generator
 * runs at radius R + (D/2) cos φ, so it is longer outside and shorter inside.
 *
 * @param arc centreline radius and distance along the centreline from the arc's start [mm]
 * @param generator angle φ from the outside of the curve [rad]
 */
export function alongGenerator(
  arc: { radius: number; distance: number },
  tube: { outsideDiameter: number },
  generator: number,
): number {
  const radius = arc.radius + (tube.outsideDiameter / 2) * Math.cos(generator);
  return (radius * arc.distance) / arc.radius;
}

/**
 * What falls out between two saw cuts [mm], or undefined where the two kerfs are wider than what is to be taken
 * out: one pass then does it.
 */
export function scrapLength(cut: { removed: number; kerf: number }): number | undefined {
  const scrap = cut.removed - 2 * cut.kerf;
  return scrap > 0 ? scrap : undefined;
}
