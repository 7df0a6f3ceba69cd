import type { Finding } from '../../plan/finding.ts';
import type { LaidSite, Off, SiteSource } from './laid-site.ts';
import { layLegs } from './legs/lay-legs.ts';
import { solveLevels } from './level/solve-levels.ts';
import { layThings } from './points/lay-things.ts';
import { sitePoints } from './points/site-points.ts';
import { framePlace } from './standing/frame-place.ts';
import { standFrame } from './standing/stand-frame.ts';

const UPRIGHT = { x: 0, y: 0, z: 1 };

/**
 * The whole site from what was typed, in order: levels, points, the frame as it stands, things, legs.
 *
 * @param off how far each measured value is taken off what was typed
 */
export function laySite(source: SiteSource, off: Off): { laid: LaidSite; findings: readonly Finding[] } {
  const { site } = source;
  const level = solveLevels(site.level, off);
  const up = level.levels.at(-1)?.up ?? UPRIGHT;
  const { levels } = level;
  const known = sitePoints(site, { levels, off });
  const { points } = known;
  const stood = standFrame(source, { levels, up, points, off });
  const { frame } = stood;
  const things = layThings(site, { levels, points, frame, placeOnFrame: framePlace(frame, source.wanted), off });
  const legs = layLegs(source, { levels, points, frame, things: things.things, off });
  return {
    laid: { levels, up, points, frame, things: things.things, legs: legs.legs },
    findings: [level, known, stood, things, legs].flatMap((part) => part.findings),
  };
}
