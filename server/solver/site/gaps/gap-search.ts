import type { LeastGap } from '../../geometry/least-gap.ts';
import type { LaidThing } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { tubeTravel, type GapTube } from './gap-tubes.ts';
import { thingGap } from './thing-gap.ts';

/** A tube beside a thing, and where it comes nearest over all that swings. */
export type Beside = { readonly tube: GapTube; readonly found: LeastGap };

/** Seen roughly: to this, or to this share of how far it is off [mm]; our own choice. */
export const COARSE = { fine: 0.5, share: 0.02 };

/** So many of the nearest are sought to the end; our own choice. */
const NEAREST = 3;

/**
 * The tubes beside a thing, nearest first. The nearest and all that have some room, but too little, are sought to the end; of
 * the others no more is told than about how far they are off or how deep they run into it.
 *
 * @param clearance that the thing asks for [mm]
 */
export function tubesBeside(
  study: SiteStudy,
  thing: LaidThing,
  tubes: readonly GapTube[],
  clearance: number,
): Beside[] {
  type Sought = Beside & { readonly isFine: boolean; readonly gap: number };
  const sought = (tube: GapTube, isFine: boolean): Sought | undefined => {
    const line = tube.lineIn(study.laid);
    const travel = tubeTravel(tube, study, study.laid);
    const found = line && thingGap(line, thing, travel, isFine ? {} : COARSE);
    // as near as it may still be, so that one that is not sought to the end is never taken for further than it is
    return found && { tube, found, isFine, gap: (isFine ? found.distance : found.atLeast) - tube.outsideDiameter / 2 };
  };
  const all = tubes.flatMap((tube) => sought(tube, false) ?? []);
  for (;;) {
    all.sort((a, b) => a.gap - b.gap);
    const next = all.findIndex(
      ({ isFine, gap }, index) => !isFine && (index === 0 || (gap > 0 && (index < NEAREST || gap < clearance))),
    );
    const one = all[next];
    if (one === undefined) return all;
    const finely = sought(one.tube, true);
    all.splice(next, 1, ...(finely === undefined ? [] : [finely]));
  }
}
