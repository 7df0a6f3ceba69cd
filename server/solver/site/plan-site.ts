import type { Finding } from '../../plan/finding.ts';
import type { SitePlan } from '../../plan/site.ts';
import { planGaps } from './gaps/plan-gaps.ts';
import { EXACT, type LaidSite, type SiteDoubt, type SiteSource } from './laid-site.ts';
import { laySite } from './lay-site.ts';
import { levelRows } from './level/level-rows.ts';
import { planLevel } from './level/plan-level.ts';
import { planLegs } from './legs/plan-legs.ts';
import { planPoints } from './points/plan-points.ts';
import { siteDoubts } from './site-doubts.ts';
import type { SiteStudy } from './site-study.ts';
import { planStanding } from './standing/plan-standing.ts';
import { planStrength } from './strength/plan-strength.ts';
import { siteViews } from './views/site-views.ts';

/** What there is to say of the site. */
export type PlannedSite = { readonly site: SitePlan; readonly findings: readonly Finding[] };

/** What the level must show, where points are, legs and the room around tubes, with bands; what stops any of it. */
export function planSite(source: SiteSource): PlannedSite {
  const { laid, findings } = laySite(source, EXACT);
  const varied = siteDoubts(source).map((doubt) => ({ doubt, laid: laidOff(source, doubt, laid) }));
  const study: SiteStudy = { source, laid, varied };
  const level = planLevel(study);
  const points = planPoints(study);
  const standing = planStanding(study);
  const legs = planLegs(study);
  const gaps = planGaps(study);
  const strength = planStrength(study);
  return {
    site: {
      level: level.level,
      rows: levelRows(study),
      points: points.points,
      standing: standing.standing,
      legs: legs.legs,
      gaps: gaps.gaps,
      strength: strength.strength,
      views: siteViews(study, gaps.gaps),
    },
    findings: [findings, level, points, standing, legs, gaps, strength].flatMap((part) =>
      'findings' in part ? part.findings : part,
    ),
  };
}

/** The site with one value off by its accuracy; where it cannot be laid that way, off the other way. */
function laidOff(source: SiteSource, { field, plusMinus }: SiteDoubt, exact: LaidSite): LaidSite {
  const by = (change: number): LaidSite => laySite(source, (one) => (one === field ? change : 0)).laid;
  const more = by(plusMinus);
  return countOf(more) < countOf(exact) ? by(-plusMinus) : more;
}

/** How much of a site could be told. */
const countOf = ({ levels, points, frame, things, legs }: LaidSite): number =>
  points.size + [...levels, frame, ...things, ...legs].filter((part) => part !== null).length;
