import type { LaidSite, SiteSource } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { setInUse } from './sets-read.ts';

/** Whether readings tell how the structure lies now; else its own axes are taken for level. */
export const isLevelKnown = (
  { levels }: Pick<LaidSite, 'levels'>,
  { site: { level } }: Pick<SiteSource, 'site'>,
): boolean => (levels[setInUse(level)] ?? null) !== null;

/** What else a number rests on that counts from level: nothing, or the structure's own axes where nobody has read one. */
export const ownAxes = ({ laid, source }: SiteStudy): 'level-own-axes'[] =>
  isLevelKnown(laid, source) ? [] : ['level-own-axes'];
