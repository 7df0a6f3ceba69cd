import type { LevelReading } from '../../../job/level.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { LevelPlan, SiteResidual } from '../../../plan/site.ts';
import { band, figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { angleBetween, type Vector3 } from '../../geometry/vector.ts';
import { riseBand, riseOf } from '../rise.ts';
import type { SiteStudy } from '../site-study.ts';
import { AHEAD, PORT, UPRIGHT } from '../structure-axes.ts';
import { levelDrift } from './level-drift.ts';
import { accuracyOf } from './level-equations.ts';
import { levelFindings } from './level-findings.ts';
import { isLevelKnown } from './own-axes.ts';
import { scatterOf } from './scatter.ts';
import { isRead, setInUse } from './sets-read.ts';
import { disagrees } from './solve-levels.ts';

/**
 * How the structure lies now, by the last set that is read, with what has changed since the set before [degrees]; what is
 * doubtful of it, and typed directions that are none.
 */
export function planLevel(study: SiteStudy): { level: LevelPlan; findings: Finding[] } {
  const { laid, source } = study;
  const { level } = source.site;
  const now = setInUse(level);
  const known = isLevelKnown(laid, source);
  const { drift, findings } = levelDrift(study);
  const waiting = level.sets.findLastIndex((set, index) => index > now && !isRead(set));
  return {
    level: {
      known,
      up: { ...laid.up },
      ...howItLies(study, known),
      set: known ? now + 1 : 0,
      waiting: waiting + 1,
      taken: known ? (level.sets[now]?.taken ?? '') : '',
      goodFor: level.goodFor,
      residuals: known ? residualsOf(study, now) : [],
      drift,
    },
    findings: [...findings, ...levelFindings(study)],
  };
}

/** Trim, list, and how far the upright is off plumb [degrees]; where the readings scatter, what their ± is widened by. */
function howItLies(study: SiteStudy, known: boolean): Pick<LevelPlan, 'trim' | 'list' | 'tilt'> {
  const { laid, source } = study;
  const { up } = laid;
  const now = setInUse(source.site.level);
  const set = source.site.level.sets[now];
  const scatter = known && set !== undefined ? scatterOf(set, source.site.level, laid.levels[now] ?? null) : 1;
  const [wider, widened] =
    scatter > 1 ? [', ± by k', [input('k', 'readings-scatter-over-their-accuracy', scatter, 'ratio')]] : ['', []];
  const lies = (along: Vector3, value: number, formula: string, of: ReturnType<typeof input>) =>
    figure(
      value,
      'deg',
      formula + wider,
      [of, ...widened],
      known
        ? ['level-vector', 'level-accuracy', ...(scatter > 1 ? (['level-scatter'] as const) : [])]
        : ['level-own-axes'],
      riseBand(study, (site) => ({ direction: along, up: site.up })),
    );
  return {
    trim: lies(AHEAD, riseOf(AHEAD, up) * DEGREES, 'p = arcsin uₓ', input('uₓ', 'up-along-x', up.x, 'ratio')),
    list: lies(PORT, riseOf(PORT, up) * DEGREES, 'r = arcsin u_y', input('u_y', 'up-along-y', up.y, 'ratio')),
    tilt: lies(
      UPRIGHT,
      angleBetween(up, UPRIGHT) * DEGREES,
      'τ = arccos u_z',
      input('u_z', 'up-along-z', up.z, 'ratio'),
    ),
  };
}

/** What a reading shows; one that is not taken is never asked for, its set being none in use. */
const measuredAs = (reading: LevelReading) =>
  reading.reading === 'incline'
    ? ({ part: 'angle', value: reading.angle ?? 0, unit: 'deg' } as const)
    : ({ part: 'height', value: reading.height ?? 0, unit: 'mm' } as const);

/** Each reading of a set beside what the solution makes of it. */
function residualsOf({ laid, source }: SiteStudy, set: number): SiteResidual[] {
  const { level } = source.site;
  return (level.sets[set]?.readings ?? []).map((reading, index) => {
    const { part, value, unit } = measuredAs(reading);
    const residual = laid.levels[set]?.residuals[index] ?? 0;
    const accuracy = accuracyOf(reading, level);
    const measured = input('m', 'measured', value, unit);
    return {
      field: `/site/level/sets/${set}/readings/${index}/${part}`,
      measured: figure(value, unit, 'm', [measured], ['typed'], band(accuracy, 'site-level')),
      residual: figure(
        residual,
        unit,
        'v = m − s',
        [measured, input('s', 'solved', value - residual, unit)],
        ['level-fit'],
      ),
      disagrees: disagrees(residual, accuracy),
    };
  });
}
