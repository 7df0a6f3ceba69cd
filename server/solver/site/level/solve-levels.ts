import type { Level, LevelSet } from '../../../job/level.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { length, subtract } from '../../geometry/vector.ts';
import { MOST_DEVIATIONS } from '../deviations.ts';
import type { Off, SolvedLevel } from '../laid-site.ts';
import { hundredths } from './hundredths.ts';
import { accuracyOf, areInLine, levelEquations, saidOfUp } from './level-equations.ts';
import { isRead, setInUse } from './sets-read.ts';
import { residualOf, upByGravity } from './up-by-gravity.ts';

/** No surface that is level in a structure reads more [degrees]; common practice, no source. */
const STEEPEST = 45;

/** One set solved, and whether anything of it was taken off what was typed. */
type Solved = { readonly level: SolvedLevel | null; readonly findings: readonly Finding[] };

/** Every set solved: up for each in order, null where its readings do not tell. */
type SolvedLevels = {
  readonly levels: readonly (SolvedLevel | null)[];
  readonly findings: readonly Finding[];
  readonly sets: readonly Solved[];
};

/** Whether a residual is more than the accuracy of its reading explains. */
export const disagrees = (residual: number, accuracy: number): boolean =>
  Math.abs(residual) > MOST_DEVIATIONS * accuracy;

/**
 * Up by gravity for every set of readings, in the structure's axes (x ahead, y to port, z up). A bow that is 0.8° down
 * and a port side that is 1.7° up give u = (−0.0140, 0.0297, 0.9995).
 *
 * @param off how far each reading is taken off what was typed [degrees or mm], by `/site/level/sets/i/readings/j`
 * @param typed the same sets as typed: those that nothing is off of are taken over from there
 * @returns one for each set; null where its readings do not tell, with level-readings-too-few, level-readings-in-line,
 *   level-readings-impossible, level-reading-over-45 or direction-none, or are not all taken, with level-set-not-read. A
 *   reading that disagrees with the others of its set (level-angle-disagrees, level-height-disagrees) is a caution.
 */
export function solveLevels(level: Level, off: Off, typed?: SolvedLevels): SolvedLevels {
  const now = setInUse(level);
  const sets = level.sets.map((set, index): Solved => {
    const field = `/site/level/sets/${index}`;
    const before = typed?.sets[index];
    if (before !== undefined && set.readings.every((_, count) => off(`${field}/readings/${count}`) === 0))
      return before;
    return isRead(set) ? solveSet(set, { field, level, off }) : notRead(set, { index, now });
  });
  return { levels: sets.map((one) => one.level), findings: sets.flatMap(({ findings }) => findings), sets };
}

/** A set that is begun, at the first of its values that is not read; with the set that everything goes by, if any. */
function notRead({ readings }: LevelSet, { index, now }: { index: number; now: number }): Solved {
  const first = readings.findIndex((one) => (one.reading === 'incline' ? one.angle : one.height) === null);
  const part = readings[first]?.reading === 'incline' ? 'angle' : 'height';
  const data = { value: index + 1, ...(now < 0 ? {} : { now: now + 1 }) };
  const field = `/site/level/sets/${index}/readings/${first}/${part}`;
  return { level: null, findings: [finding('level-set-not-read', 'caution', field, data)] };
}

function solveSet(set: LevelSet, at: { field: string; level: Level; off: Off }): Solved {
  const cannot = (...findings: Finding[]): Solved => ({ level: null, findings });
  const wrong = [...wrongReadings(set, at.field), ...heightsTooFarApart(set, at)];
  const equations = levelEquations(set, at);
  if (wrong.length > 0 || equations === undefined) return cannot(...wrong);
  if (saidOfUp(equations) < 2) return cannot(finding('level-readings-too-few', 'stop', at.field));
  if (areInLine(equations)) return cannot(finding('level-readings-in-line', 'stop', at.field));
  const up = upByGravity(equations);
  if (up === undefined || !(up.z > 0)) return cannot(finding('level-readings-impossible', 'stop', at.field));
  // with just enough readings what is left over is rounding
  const exact = saidOfUp(equations) === 2;
  const residuals = equations.map((one) => (exact ? 0 : residualOf(one, up) * (one.kind === 'incline' ? DEGREES : 1)));
  return { level: { up, residuals }, findings: disagreements(set, residuals, at) };
}

/** Levels laid along nothing, and angles that no surface of the kind has. */
const wrongReadings = (set: LevelSet, field: string): Finding[] =>
  set.readings.flatMap((reading, index) => {
    if (reading.reading === 'height') return [];
    const at = `${field}/readings/${index}`;
    const none = length(reading.along) > 0 ? [] : [finding('direction-none', 'stop', `${at}/along`)];
    const { angle } = reading;
    if (angle === null || Math.abs(angle) <= STEEPEST) return none;
    const data = { value: hundredths(angle), high: STEEPEST, flat: hundredths(fromTheHorizontal(angle)) };
    return [...none, finding('level-reading-over-45', 'stop', `${at}/angle`, data)];
  });

/**
 * What a level that was read from the upright, or from its other end, would show from the horizontal [degrees]. To which
 * side is not known: the upright leans either way, and the other end rises where this one falls.
 */
function fromTheHorizontal(angle: number): number {
  const size = Math.abs(angle);
  // from the other end: 178.3 is 1.7
  const read = size > 90 ? 180 - size : size;
  return read > STEEPEST ? 90 - read : read;
}

/** Heights of two marks that differ by more than the marks are apart, and than their accuracies explain. */
function heightsTooFarApart(set: LevelSet, { field, level }: { field: string; level: Level }): Finding[] {
  const heights = set.readings.flatMap((reading, index) =>
    reading.reading === 'height' && reading.height !== null
      ? [{ at: reading.at, height: reading.height, index, accuracy: accuracyOf(reading, level) }]
      : [],
  );
  return heights.flatMap((one, count) => {
    const beyond = heights.slice(0, count).map((other) => ({
      by: Math.max(0, Math.abs(one.height - other.height) - length(subtract(one.at, other.at))),
      accuracy: Math.hypot(one.accuracy, other.accuracy),
    }));
    const worst = Math.max(0, ...beyond.filter(({ by, accuracy }) => disagrees(by, accuracy)).map(({ by }) => by));
    if (worst === 0) return [];
    return [finding('level-readings-impossible', 'stop', `${field}/readings/${one.index}/height`, { value: worst })];
  });
}

const disagreements = (
  set: LevelSet,
  residuals: readonly number[],
  { field, level }: { field: string; level: Level },
): Finding[] =>
  set.readings.flatMap((reading, index) => {
    const residual = residuals[index] ?? 0;
    if (!disagrees(residual, accuracyOf(reading, level))) return [];
    const at = `${field}/readings/${index}`;
    return reading.reading === 'incline'
      ? [finding('level-angle-disagrees', 'caution', `${at}/angle`, { value: residual })]
      : [finding('level-height-disagrees', 'caution', `${at}/height`, { value: residual })];
  });
