import type { Site } from '../../../job/site.ts';
import type { Post } from '../../correction/corrected.ts';
import { farFrom } from '../../correction/post-room.ts';
import { inverted, moved, turned } from '../../geometry/rigid-motion.ts';
import { movedSolid, type Solid } from '../../geometry/solid.ts';
import { turnedAbout, type Turning } from '../../geometry/turning.ts';
import { rotate } from '../../geometry/vector.ts';
import type { LaidFrame, LaidSite, LaidThing } from '../laid-site.ts';
import { frameTravel } from './frame-travel.ts';
import { COARSE } from './gap-search.ts';
import { swingOf, thingGap } from './thing-gap.ts';

/** Turns that are nearer to each other than this are one [rad]; our own choice. */
const SAME_TURN = 1e-3;

/**
 * The things of a site that a correction of the frame keeps clear of, in the frame's own axes: everything that asks for
 * room, where it stands as typed and, where it or the frame swings, as the frame has it at the turns at which it comes
 * nearest to each of the frame's tubes; not to those that it stays far from.
 *
 * @param laid the site with the wanted frame in it [mm, rad]
 * @param outsideDiameter of the frame's tubes [mm]
 */
export function keptClear(
  { frame, things }: Pick<LaidSite, 'frame' | 'things'>,
  site: Pick<Site, 'standing'>,
  outsideDiameter: number,
): Post[] {
  if (frame === null) return [];
  const swings = frameTravel(frame, site);
  return things.flatMap((thing) => {
    if (thing === null || thing.clearance === null) return [];
    const { field, name, body, clearance } = thing;
    const keep = outsideDiameter / 2 + clearance;
    const far = farFrom({ solid: body, keep });
    return turnsOf(thing, frame, swings, { keep, far }).map(({ ofThing, ofFrame }, index) => ({
      field,
      name,
      solid: inFrame(body, frame, { thing, ofThing, swings, ofFrame }),
      keep,
      atRest: index === 0,
    }));
  });
}

/** Where a post stands is found so closely that its room is as good as a tape tells it [mm]; our own choice. */
const CLOSE = { fine: 0.1 };

type Turns = { readonly ofThing: number; readonly ofFrame: number };

/** At rest first, then each other pair of turns at which it comes nearest to a tube. */
function turnsOf(
  thing: LaidThing,
  frame: LaidFrame,
  swings: Turning | null,
  { keep, far }: { readonly keep: number; readonly far: number },
): Turns[] {
  const all: Turns[] = [{ ofThing: 0, ofFrame: 0 }];
  if (swingOf(thing) === null && swings === null) return all;
  for (const { centreline } of frame.lines) {
    const seen = thingGap(centreline, thing, swings, { ...COARSE, within: far });
    if (seen === undefined || seen.distance >= far) continue;
    // what the wanted frame itself runs into no correction keeps clear of: there any turn will do
    const gap = seen.distance < keep ? seen : (thingGap(centreline, thing, swings, CLOSE) ?? seen);
    const isNew = all.every(
      ({ ofThing, ofFrame }) =>
        Math.abs(ofThing - gap.solidTurn) > SAME_TURN || Math.abs(ofFrame - gap.lineTurn) > SAME_TURN,
    );
    if (isNew) all.push({ ofThing: gap.solidTurn, ofFrame: gap.lineTurn });
  }
  return all;
}

/** A solid as the frame has it: it turns with its thing, and against the frame. */
function inFrame(
  body: Solid,
  { motion }: LaidFrame,
  {
    thing: { swing },
    ofThing,
    swings,
    ofFrame,
  }: { readonly thing: LaidThing; readonly swings: Turning | null } & Turns,
): Solid {
  const back = inverted(motion);
  const turnedWith = (solid: Solid, turning: Turning | null, angle: number): Solid =>
    turning === null
      ? solid
      : movedSolid(
          solid,
          (point) => turnedAbout(point, turning, angle),
          (way) => rotate(way, turning.axis, angle),
        );
  return movedSolid(
    turnedWith(turnedWith(body, swing, ofThing), swings, -ofFrame),
    (point) => moved(back, point),
    (way) => turned(back, way),
  );
}
