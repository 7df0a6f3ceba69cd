import type { Finding } from '../../plan/finding.ts';
import type { LaidSite, Off, SiteSource } from './laid-site.ts';
import { layLegs } from './legs/lay-legs.ts';
import { setInUse } from './level/sets-read.ts';
import { solveLevels } from './level/solve-levels.ts';
import { madeWith } from './made-doubts.ts';
import { layThings } from './points/lay-things.ts';
import { sitePoints } from './points/site-points.ts';
import { framePlace } from './standing/frame-place.ts';
import { standFrame } from './standing/stand-frame.ts';
import { standsOnTheSame } from './standing/stands-on.ts';
import { UPRIGHT } from './structure-axes.ts';

/** A site as it was laid, what was found on the way, and the parts that a laying with a value off may take over. */
export type Laying = {
  readonly laid: LaidSite;
  readonly findings: readonly Finding[];
  readonly parts: {
    readonly level: ReturnType<typeof solveLevels>;
    readonly known: ReturnType<typeof sitePoints>;
    readonly stood: ReturnType<typeof standFrame>;
  };
};

/**
 * The whole site from what was typed, in order: levels, points, the frame as it stands, things, legs.
 *
 * @param off how far each measured value is taken off what was typed
 * @param before the same site as typed: what rests on nothing that is off is taken over from it, which gives the same
 *   sooner
 */
export function laySite(typed: SiteSource, off: Off, before: Laying | null = null): Laying {
  const source = madeWith(typed, off);
  const { site } = source;
  const level = solveLevels(site.level, off, before?.parts.level);
  const { levels } = level;
  const up = levels[setInUse(site.level)]?.up ?? UPRIGHT;
  const known = sitePoints(site, { levels, off }, before?.parts.known);
  const { points } = known;
  const stood =
    before !== null && source === typed && standsOnTheSame(site, { up, points, off }, before.laid)
      ? before.parts.stood
      : standFrame(source, { levels, up, points, off });
  const { frame } = stood;
  const things = layThings(site, { levels, points, frame, placeOnFrame: framePlace(frame, source.wanted), off });
  const legs = layLegs(source, { levels, points, frame, things: things.things, off });
  return {
    laid: { levels, up, points, frame, things: things.things, legs: legs.legs },
    findings: [level, known, stood, things, legs].flatMap((part) => part.findings),
    parts: { level, known, stood },
  };
}
