import type { Finding } from '../../../plan/finding.ts';
import type { LevelPlan } from '../../../plan/site.ts';
import { figure, input } from '../../figure.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { angleBetween, dot, type Vector3 } from '../../geometry/vector.ts';
import type { LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';

/** A turn of more than so many of its ± is one: three standard deviations, common practice, no source. */
const MOVED_BEYOND = 3;

/** Inclination of one of the structure's axes [degrees]: trim of x, ahead up; list of y, port up. */
export const inclination = (up: Vector3, axis: 'x' | 'y'): number =>
  Math.asin(Math.min(Math.max(up[axis], -1), 1)) * DEGREES;

/**
 * What has changed since the latest earlier set that tells, as the last set has it less as that one had it; level-drift
 * where the turn is more than three times its ±, which is that of both sets together.
 */
export function levelDrift(study: SiteStudy): { drift: LevelPlan['drift']; findings: Finding[] } {
  const { laid, source } = study;
  const last = laid.levels.length - 1;
  const before = laid.levels.findLastIndex((level, index) => index < last && level !== null);
  const [now, then] = [laid.levels[last], laid.levels[before]];
  if (!now || !then) return { drift: null, findings: [] };
  const between = (of: (now: Vector3, then: Vector3) => number) => (site: LaidSite) => {
    const [after, earlier] = [site.levels[last], site.levels[before]];
    return after && earlier ? of(after.up, earlier.up) : undefined;
  };
  const change = (axis: 'x' | 'y') => {
    const [after, earlier] = [inclination(now.up, axis), inclination(then.up, axis)];
    return figure(
      after - earlier,
      'deg',
      'Δ = a − b',
      [input('a', 'now', after, 'deg'), input('b', 'before', earlier, 'deg')],
      ['level-vector', 'level-accuracy'],
      siteBand(
        study,
        between((a, b) => inclination(a, axis) - inclination(b, axis)),
      ),
    );
  };
  const turn = angleBetween(now.up, then.up) * DEGREES;
  const turnBand = siteBand(
    study,
    between((a, b) => angleBetween(a, b) * DEGREES),
  );
  const [trim, list] = [change('x'), change('y')];
  const drift = {
    set: before + 1,
    taken: source.site.level.sets[before]?.taken ?? '',
    trim,
    list,
    turn: figure(
      turn,
      'deg',
      'φ = arccos(u₁ · u₂)',
      [input('u₁ · u₂', 'up-now-along-up-before', dot(now.up, then.up), 'ratio')],
      ['level-vector', 'level-drift'],
      turnBand,
    ),
  };
  if (turn <= MOVED_BEYOND * (turnBand?.plusMinus ?? 0)) return { drift, findings: [] };
  const data = { value: turn, trim: hundredths(trim.value), list: hundredths(list.value) };
  return { drift, findings: [finding('level-drift', 'caution', `/site/level/sets/${last}`, data)] };
}

/** As a good level reads. */
const hundredths = (angle: number): number => Math.round(angle * 100) / 100 || 0; // never −0
