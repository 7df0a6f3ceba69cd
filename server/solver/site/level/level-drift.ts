import type { Finding } from '../../../plan/finding.ts';
import type { LevelPlan } from '../../../plan/site.ts';
import { figure, input } from '../../figure.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { angleBetween, dot, scale, type Vector3 } from '../../geometry/vector.ts';
import { MOST_DEVIATIONS } from '../deviations.ts';
import type { LaidSite } from '../laid-site.ts';
import { riseOf, turnBetween } from '../rise.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { sizeBand } from '../size-band.ts';
import { AHEAD, PORT } from '../structure-axes.ts';
import { hundredths } from './hundredths.ts';
import { setInUse } from './sets-read.ts';

/** The latest earlier set that tells, which the one in use is compared with; −1 without one. */
export const setBefore = (levels: LaidSite['levels'], now: number): number =>
  levels.findLastIndex((level, index) => index < now && level !== null);

/**
 * What has changed since the latest earlier set that tells, as the set in use has it less as that one had it; level-drift
 * where the turn is more than three times its ±, which is that of both sets together.
 */
export function levelDrift(study: SiteStudy): { drift: LevelPlan['drift']; findings: Finding[] } {
  const { laid, source } = study;
  const last = setInUse(source.site.level);
  const before = setBefore(laid.levels, last);
  const [now, then] = [laid.levels[last], laid.levels[before]];
  if (!now || !then) return { drift: null, findings: [] };
  const between =
    <Of>(of: (now: Vector3, then: Vector3) => Of) =>
    (site: LaidSite) => {
      const [after, earlier] = [site.levels[last], site.levels[before]];
      return after && earlier ? of(after.up, earlier.up) : undefined;
    };
  const change = (axis: Vector3) => {
    const [after, earlier] = [now, then].map(({ up }) => riseOf(axis, up) * DEGREES);
    const inputs = [input('a', 'now', after ?? 0, 'deg'), input('b', 'before', earlier ?? 0, 'deg')];
    const changed = between((a, b) => (riseOf(axis, a) - riseOf(axis, b)) * DEGREES);
    const sources = ['level-vector', 'level-accuracy'] as const;
    return figure((after ?? 0) - (earlier ?? 0), 'deg', 'Δ = a − b', inputs, sources, siteBand(study, changed));
  };
  const turn = angleBetween(now.up, then.up) * DEGREES;
  const turnBand = sizeBand(
    study,
    between((a, b) => scale(turnBetween(b, a), DEGREES)),
  );
  const [trim, list] = [change(AHEAD), change(PORT)];
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
  if (turn <= MOST_DEVIATIONS * (turnBand?.plusMinus ?? 0)) return { drift, findings: [] };
  const data = { value: turn, trim: hundredths(trim.value), list: hundredths(list.value) };
  return { drift, findings: [finding('level-drift', 'caution', `/site/level/sets/${last}`, data)] };
}
