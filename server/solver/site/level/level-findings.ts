import type { Site } from '../../../job/site.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { EXACT } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { directionOf } from './directions.ts';
import { laidContext } from './laid-context.ts';
import { isRead, setInUse } from './sets-read.ts';

/**
 * What is doubtful of how the structure lies: level-not-read, level-no-time, level-sets-order; and typed directions that
 * are none.
 */
export const levelFindings = (study: SiteStudy): Finding[] => [
  ...notRead(study.source.site),
  ...notTimed(study.source.site),
  ...outOfOrder(study.source.site),
  ...notDirections(study),
];

/**
 * Said where anything that is asked for counts from plumb or level: as a caution where the frame is turned or lifted to
 * level, since every leg under it is then as long as that has it. A set that is begun says so itself.
 */
function notRead({ level, points, directions, standing, legs }: Site): Finding[] {
  if (level.sets.length > 0) return [];
  const standsToLevel = standing.slopes.some(({ to }) => to === 'level') || standing.height?.to === 'level';
  const matters = directions.length + legs.length > 0 || points.some(({ at }) => at.by === 'plumb');
  if (standsToLevel) return [finding('level-not-read', 'caution', '/site/level/sets')];
  return matters ? [finding('level-not-read', 'note', '/site/level/sets')] : [];
}

function notTimed({ level }: Site): Finding[] {
  const now = setInUse(level);
  const set = level.sets[now];
  if (set === undefined || set.taken !== '' || set.readings.length === 0) return [];
  return [finding('level-no-time', 'note', `/site/level/sets/${now}/taken`)];
}

/** The set in use is the last that is listed, whatever was taken later; times of one clock sort as they are written. */
function outOfOrder({ level }: Site): Finding[] {
  const now = setInUse(level);
  const taken = level.sets[now]?.taken ?? '';
  if (taken === '') return [];
  const times = level.sets.map((set, index) => (index < now && isRead(set) ? set.taken : ''));
  const latest = times.reduce((best, time, index) => (time > (times[best] ?? '') ? index : best), 0);
  if ((times[latest] ?? '') <= taken) return [];
  const data = { value: latest + 1, now: now + 1 };
  return [finding('level-sets-order', 'caution', `/site/level/sets/${now}/taken`, data)];
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
