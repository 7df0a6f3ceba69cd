import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { leastGap } from '../../geometry/least-gap.ts';
import { movedLine } from '../../geometry/moved-centreline.ts';
import type { LaidThing } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import type { FoundGap } from './gap-row.ts';
import { FINE } from './thing-gap.ts';

/** Less room than this missing is rounding [mm]; a turn of less is none [rad]. */
const NOTHING = 1e-6;

/** A turn as it is told: to a tenth of a degree, which nobody reads a swing closer than; our own choice. */
const told = (turn: number): number => Math.round(turn * DEGREES * 10) / 10;

type AsksForRoom = LaidThing & { readonly clearance: number };

/** What there is to say of the tube that comes nearest to a thing; null where it has room, or that is said elsewhere. */
export function gapFinding(found: FoundGap | undefined, thing: AsksForRoom, study: SiteStudy): Finding | null {
  const { name, field, clearance } = thing;
  const gap = found?.row.gap.value ?? Infinity;
  if (found === undefined || gap >= clearance - NOTHING || isStruckAtRest(found, thing, study)) return null;
  const turn = Math.abs(found.thingTurn) > NOTHING ? found.thingTurn : found.frameTurn;
  const data = { name: found.row.name, thing: name, ...(told(turn) === 0 ? {} : { swung: told(turn) }) };
  return gap < -NOTHING
    ? finding('gap-struck', 'stop', field, { ...data, value: -gap })
    : finding('gap-under', 'caution', field, { ...data, value: gap, low: clearance });
}

/** Whether the wanted frame itself has too little room for a thing where it stands: that is said with the frame. */
function isStruckAtRest(found: FoundGap, thing: AsksForRoom, { source, laid }: SiteStudy): boolean {
  const { frame } = laid;
  if (frame === null || found.row.of === 'leg') return false;
  if (Math.hypot(found.thingTurn, found.frameTurn) > NOTHING) return false;
  const least = source.tube.outsideDiameter / 2 + thing.clearance;
  return source.wanted.members.some(({ centreline }) => {
    const line = movedLine(frame.motion, centreline);
    const gap = leastGap({ line, solid: thing.body, lineTurns: null, solidTurns: null }, { fine: FINE, within: least });
    return gap !== undefined && gap.distance < least - NOTHING;
  });
}
