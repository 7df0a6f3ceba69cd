import type { Level, LevelReading, LevelSet } from '../../../job/level.ts';
import { RADIANS } from '../../geometry/angle.ts';
import { add, ORIGIN, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { Off } from '../laid-site.ts';

/**
 * What one reading says of up, u: arcsin(lever · u) = measured for an incline, its lever a unit direction [rad]; and
 * lever · u = measured for a height, its lever the mark and its height both counted from the weighted middle of all
 * marks [mm]: so the height of the origin, which nobody asks for, is out of it.
 */
export type LevelEquation = {
  readonly kind: LevelReading['reading'];
  readonly lever: Vector3;
  readonly measured: number;
  /** ± [rad or mm]. */
  readonly accuracy: number;
};

/** Below this a second line of readings is the first one again: two that are one degree apart. Our own choice. */
const IN_LINE = 0.01;

/** The ± of a reading: its own, or that of all of its kind [degrees or mm]. */
export const accuracyOf = ({ reading, accuracy }: LevelReading, level: Level): number =>
  accuracy ?? (reading === 'incline' ? level.angleAccuracy : level.heightAccuracy);

/**
 * One equation for each reading of a set, in order.
 *
 * @param field pointer of the set
 * @returns undefined where an incline was laid along no direction, or something is not read yet
 */
export function levelEquations(
  set: LevelSet,
  { field, level, off }: { field: string; level: Level; off: Off },
): LevelEquation[] | undefined {
  const raw = set.readings.map((reading, index): LevelEquation | undefined => {
    const accuracy = accuracyOf(reading, level);
    const change = off(`${field}/readings/${index}`);
    if (reading.reading === 'height') {
      if (reading.height === null) return undefined;
      return { kind: 'height', lever: reading.at, measured: reading.height + change, accuracy };
    }
    const lever = unit(reading.along);
    if (lever === undefined || reading.angle === null) return undefined;
    return {
      kind: 'incline',
      lever,
      measured: (reading.angle + change) * RADIANS,
      accuracy: accuracy * RADIANS,
    };
  });
  const equations = raw.filter((one) => one !== undefined);
  return equations.length === raw.length ? fromTheMiddle(equations) : undefined;
}

/** Heights and marks counted from their weighted middle: for any u the best height of the origin is then nothing. */
function fromTheMiddle(equations: readonly LevelEquation[]): LevelEquation[] {
  let [total, height, mark] = [0, 0, ORIGIN];
  for (const { kind, lever, measured, accuracy } of equations) {
    if (kind !== 'height') continue;
    const weight = 1 / accuracy ** 2;
    total += weight;
    height += weight * measured;
    mark = add(mark, scale(lever, weight));
  }
  if (total === 0) return [...equations];
  const middle = scale(mark, 1 / total);
  return equations.map((one) =>
    one.kind === 'height'
      ? { ...one, lever: subtract(one.lever, middle), measured: one.measured - height / total }
      : one,
  );
}

/** How many things the readings say of up, which has two freedoms: the first height only says how high the origin is. */
export function saidOfUp(equations: readonly Pick<LevelEquation, 'kind'>[]): number {
  const heights = equations.filter(({ kind }) => kind === 'height').length;
  return equations.length - heights + Math.max(0, heights - 1);
}

/**
 * Whether all readings lie along one line, seen from above: the smaller singular value of their levers over the larger.
 * Marks count by how far they are apart, not by how well they were read.
 */
export function areInLine(equations: readonly LevelEquation[]): boolean {
  const furthest = Math.max(
    0,
    ...equations.map(({ kind, lever }) => (kind === 'height' ? Math.hypot(lever.x, lever.y) : 0)),
  );
  let [xx, xy, yy] = [0, 0, 0];
  for (const { kind, lever } of equations) {
    const size = kind === 'incline' ? 1 : furthest;
    if (size === 0) continue;
    const [x, y] = [lever.x / size, lever.y / size];
    [xx, xy, yy] = [xx + x * x, xy + x * y, yy + y * y];
  }
  const half = (xx + yy) / 2;
  const apart = Math.hypot((xx - yy) / 2, xy);
  // λ = half ± apart are the squares of the singular values
  return half - apart <= IN_LINE ** 2 * (half + apart);
}
