import type { LevelReading } from '../../../job/level.ts';
import type { Site } from '../../../job/site.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { LevelPlan, SiteResidual } from '../../../plan/site.ts';
import { band, figure, input } from '../../figure.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { angleBetween } from '../../geometry/vector.ts';
import { EXACT } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { directionOf } from './directions.ts';
import { laidContext } from './laid-context.ts';
import { inclination, levelDrift } from './level-drift.ts';
import { accuracyOf } from './level-equations.ts';
import { disagrees } from './solve-levels.ts';

const UPRIGHT = { x: 0, y: 0, z: 1 };

/**
 * How the structure lies now, by the last set of readings, with what has changed since the set before [degrees]; what is
 * doubtful of it (level-drift, level-no-time, level-not-read), and typed directions that are none.
 */
export function planLevel(study: SiteStudy): { level: LevelPlan; findings: Finding[] } {
  const { laid, source } = study;
  const { level } = source.site;
  const last = level.sets.length - 1;
  const known = (laid.levels[last] ?? null) !== null;
  const { drift, findings } = levelDrift(study);
  return {
    level: {
      known,
      up: { ...laid.up },
      ...howItLies(study, known),
      set: known ? last + 1 : 0,
      taken: known ? (level.sets[last]?.taken ?? '') : '',
      goodFor: level.goodFor,
      residuals: known ? residualsOf(study, last) : [],
      drift,
    },
    findings: [...findings, ...notRead(source.site), ...notTimed(source.site), ...notDirections(study)],
  };
}

/** Trim, list, and how far the upright is off plumb [degrees]. */
function howItLies(study: SiteStudy, known: boolean): Pick<LevelPlan, 'trim' | 'list' | 'tilt'> {
  const { up } = study.laid;
  const sources = known ? (['level-vector', 'level-accuracy'] as const) : (['level-own-axes'] as const);
  const along = (axis: 'x' | 'y', [formula, symbol, name]: readonly [string, string, string]) =>
    figure(
      inclination(up, axis),
      'deg',
      formula,
      [input(symbol, name, up[axis], 'ratio')],
      sources,
      siteBand(study, (laid) => inclination(laid.up, axis)),
    );
  return {
    trim: along('x', ['p = arcsin uₓ', 'uₓ', 'up-along-x']),
    list: along('y', ['r = arcsin u_y', 'u_y', 'up-along-y']),
    tilt: figure(
      angleBetween(up, UPRIGHT) * DEGREES,
      'deg',
      'τ = arccos u_z',
      [input('u_z', 'up-along-z', up.z, 'ratio')],
      sources,
      siteBand(study, (laid) => angleBetween(laid.up, UPRIGHT) * DEGREES),
    ),
  };
}

const measuredAs = (reading: LevelReading) =>
  reading.reading === 'incline'
    ? ({ part: 'angle', value: reading.angle, unit: 'deg' } as const)
    : ({ part: 'height', value: reading.height, unit: 'mm' } as const);

/** Each reading of a set beside what the solution makes of it. */
function residualsOf({ laid, source }: SiteStudy, set: number): SiteResidual[] {
  const { level } = source.site;
  return (level.sets[set]?.readings ?? []).map((reading, index) => {
    const { part, value, unit } = measuredAs(reading);
    const residual = laid.levels[set]?.residuals[index] ?? 0;
    const accuracy = accuracyOf(reading, level);
    return {
      field: `/site/level/sets/${set}/readings/${index}/${part}`,
      measured: figure(value, unit, 'm', [], ['typed'], band(accuracy, 'site-level')),
      residual: figure(
        residual,
        unit,
        'v = m − s',
        [input('m', 'measured', value, unit), input('s', 'solved', value - residual, unit)],
        ['level-fit'],
      ),
      disagrees: disagrees(residual, accuracy),
    };
  });
}

/** Said where anything that is asked for counts from plumb or level. */
function notRead({ level, points, directions, standing, legs }: Site): Finding[] {
  if (level.sets.length > 0) return [];
  const matters =
    directions.length + legs.length > 0 ||
    standing.slopes.some(({ to }) => to === 'level') ||
    standing.height?.to === 'level' ||
    points.some(({ at }) => at.by === 'plumb');
  return matters ? [finding('level-not-read', 'note', '/site/level/sets')] : [];
}

function notTimed({ level }: Site): Finding[] {
  const last = level.sets.at(-1);
  if (last === undefined || last.taken !== '' || last.readings.length === 0) return [];
  return [finding('level-no-time', 'note', `/site/level/sets/${level.sets.length - 1}/taken`)];
}

/** Nothing else looks at the directions that a level alone is wanted for. */
function notDirections({ laid, source }: SiteStudy): Finding[] {
  if (source.site.directions.length === 0) return [];
  const context = laidContext(laid, source, EXACT);
  return source.site.directions.flatMap(({ direction }, index) => {
    const told = directionOf(direction, `/site/directions/${index}/direction`, context);
    return 'finding' in told ? [told.finding] : [];
  });
}
