import type { Level, LevelSet } from '../../../job/level.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { length, subtract } from '../../geometry/vector.ts';
import type { Off, SolvedLevel } from '../laid-site.ts';
import { accuracyOf, areInLine, levelEquations, saidOfUp } from './level-equations.ts';
import { residualOf, upByGravity } from './up-by-gravity.ts';

/** No surface that is level in a structure reads more [degrees]; common practice, no source. */
const STEEPEST = 45;

/** A reading further off than so many of its accuracies disagrees; three standard deviations, common practice. */
const DISAGREES_BEYOND = 3;

type Solved = { level: SolvedLevel | null; findings: Finding[] };

/** Whether a residual is more than the accuracy of its reading explains. */
export const disagrees = (residual: number, accuracy: number): boolean =>
  Math.abs(residual) > DISAGREES_BEYOND * accuracy;

/**
 * Up by gravity for every set of readings, in the structure's axes (x ahead, y to port, z up). A bow that is 0.8° down
 * and a port side that is 1.7° up give u = (−0.0140, 0.0297, 0.9995).
 *
 * @param off how far each reading is taken off what was typed [degrees or mm], by `/site/level/sets/i/readings/j`
 * @returns one for each set; null where its readings do not tell, with level-readings-too-few, level-readings-in-line,
 *   level-readings-impossible, level-reading-over-45 or direction-none. A reading that disagrees with the others of its
 *   set (level-angle-disagrees, level-height-disagrees) is a caution.
 */
export function solveLevels(
  level: Level,
  off: Off,
): { levels: readonly (SolvedLevel | null)[]; findings: readonly Finding[] } {
  const solved = level.sets.map((set, index) => solveSet(set, { field: `/site/level/sets/${index}`, level, off }));
  return { levels: solved.map((one) => one.level), findings: solved.flatMap(({ findings }) => findings) };
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
    if (Math.abs(reading.angle) <= STEEPEST) return none;
    const angle = { field: `${at}/angle`, value: fromTheHorizontal(reading.angle) };
    return [
      ...none,
      finding('level-reading-over-45', 'stop', angle.field, { value: reading.angle, high: STEEPEST }, angle),
    ];
  });

/** What a level that was read from the upright, or from its other end, would show from the horizontal [degrees]. */
function fromTheHorizontal(angle: number): number {
  const size = Math.abs(angle);
  // from the other end: 178.3 is 1.7
  const read = size > 90 ? 180 - size : size;
  const flat = read > STEEPEST ? 90 - read : read;
  return angle < 0 && flat > 0 ? -flat : flat; // never −0
}

/** Heights of two marks that differ by more than the marks are apart, and than their accuracies explain. */
function heightsTooFarApart(set: LevelSet, { field, level }: { field: string; level: Level }): Finding[] {
  const heights = set.readings.flatMap((reading, index) =>
    reading.reading === 'height' ? [{ ...reading, index, accuracy: accuracyOf(reading, level) }] : [],
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
