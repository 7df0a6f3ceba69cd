/**
 * A motion that moves no point by more than this share of their spread is none: points on a line feel no turn about
 * it.
 */
const NOTHING = 1e-6;

/**
 * What is left of moves of some points when they are laid back on where they were by a rigid motion: small ones, least
 * squares. Takes the six rigid motions out of vectors of 3 n coordinates; derived.
 *
 * @param points x, y, z of each, one after the other
 */
export function standingOff(points: readonly number[]): (moves: readonly number[]) => number[] {
  const count = points.length / 3;
  const middle = [0, 0, 0];
  for (const [index, at] of points.entries()) middle[index % 3] = (middle[index % 3] ?? 0) + at / count;
  const arms = points.map((at, index) => at - (middle[index % 3] ?? 0));
  const size = arms.reduce((most, arm) => Math.max(most, Math.abs(arm)), 0);
  const basis: number[][] = [];
  const add = (motion: number[]): void => {
    const rest = without(motion, basis);
    const length = Math.hypot(...rest);
    if (length > NOTHING) basis.push(rest.map((value) => value / length));
  };
  for (const axis of [0, 1, 2]) {
    add(arms.map((_, index) => (index % 3 === axis ? 1 : 0)));
    if (size === 0) continue;
    // axis × arm, in sizes
    const [next, last] = [(axis + 1) % 3, (axis + 2) % 3];
    add(
      arms.map((_, index) => {
        const first = index - (index % 3);
        if (index % 3 === next) return -(arms[first + last] ?? 0) / size;
        return index % 3 === last ? (arms[first + next] ?? 0) / size : 0;
      }),
    );
  }
  return (moves) => without(moves, basis);
}

/** Taken out twice, because once leaves what rounding makes of motions that are nearly alike. */
function without(moves: readonly number[], basis: readonly (readonly number[])[]): number[] {
  const rest = moves.slice();
  for (let time = 0; time < 2; time += 1) {
    for (const motion of basis) {
      let share = 0;
      for (let index = 0; index < rest.length; index += 1) share += (motion[index] ?? 0) * (rest[index] ?? 0);
      for (let index = 0; index < rest.length; index += 1)
        rest[index] = (rest[index] ?? 0) - share * (motion[index] ?? 0);
    }
  }
  return rest;
}
