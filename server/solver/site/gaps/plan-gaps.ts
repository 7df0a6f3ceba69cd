import type { Finding } from '../../../plan/finding.ts';
import type { GapPlan } from '../../../plan/gap.ts';
import { figure, input } from '../../figure.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { straightPiece, type Centreline } from '../../geometry/centreline.ts';
import { leastGap } from '../../geometry/least-gap.ts';
import { movedLine } from '../../geometry/moved-centreline.ts';
import { length, subtract, unit } from '../../geometry/vector.ts';
import type { LaidLeg, LaidThing } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { gapEllipse } from './gap-ellipse.ts';
import { gapRow, type FoundGap, type GapTube } from './gap-row.ts';
import { isKeptClear } from './kept-clear.ts';
import { FINE } from './thing-gap.ts';

/** Less room than this missing is rounding [mm]; a turn of less is none [rad]. */
const NOTHING = 1e-6;

/**
 * For every thing that asks for room: the least gap to each tube of the frame as it will be made and to each leg, over
 * all that the thing and the frame swing through. A leg is no obstacle to what it stands on.
 */
export function planGaps(study: SiteStudy): { gaps: GapPlan[]; findings: Finding[] } {
  const tubes = tubesOf(study);
  const findings: Finding[] = [];
  const gaps = study.laid.things.flatMap((thing, index): GapPlan[] => {
    if (thing === null || thing.clearance === null) return [];
    const found = tubes
      .flatMap((tube) => (standsOn(tube, thing, study) ? [] : (gapRow(study, index, tube) ?? [])))
      .sort((a, b) => a.row.gap.value - b.row.gap.value);
    const said = worstOf(found[0], thing, thing.clearance);
    if (said !== null && !isStruckAtRest(found[0], thing, study)) findings.push(said);
    return [
      {
        thing: thing.name,
        field: thing.field,
        clearance: figure(thing.clearance, 'mm', 'c', [input('c', 'clearance', thing.clearance, 'mm')], ['typed']),
        rows: found.map(({ row }) => row),
        ellipse: gapEllipse(study, index),
        keptClear: isKeptClear(thing),
      },
    ];
  });
  return { gaps, findings };
}

/** The tubes of the frame in their order, then the legs. */
function tubesOf({ source, laid }: SiteStudy): (GapTube & { readonly leg: number | null })[] {
  const { outsideDiameter } = source.tube;
  const members = source.made.map(({ name }, index) => ({
    of: 'member' as const,
    name,
    outsideDiameter,
    leg: null,
    lineIn: (site: SiteStudy['laid']) => site.frame?.lines[index]?.centreline,
  }));
  const legs = laid.legs.flatMap((leg, index) =>
    leg === null
      ? []
      : [
          {
            of: 'leg' as const,
            name: leg.name,
            outsideDiameter: leg.outsideDiameter,
            leg: index,
            lineIn: (site: SiteStudy['laid']) => legLine(site.legs[index]),
          },
        ],
  );
  return [...members, ...legs];
}

/** A leg from its foot to its head. */
function legLine(leg: LaidLeg | null | undefined): Centreline | undefined {
  if (leg === null || leg === undefined) return undefined;
  const along = subtract(leg.head, leg.foot);
  const direction = unit(along);
  if (direction === undefined) return undefined;
  const piece = straightPiece({ start: leg.foot, direction, length: length(along) });
  return { pieces: [piece], length: piece.length };
}

/** Whether a leg stands on a thing: it touches that, as it must. */
function standsOn({ leg }: { readonly leg: number | null }, { name }: LaidThing, { source }: SiteStudy): boolean {
  const surface = leg === null ? undefined : source.site.legs[leg]?.foot.surface;
  return surface?.by === 'thing' && surface.thing === name;
}

/** What there is to say of the tube that comes nearest to a thing. */
function worstOf(found: FoundGap | undefined, { name, field }: LaidThing, clearance: number): Finding | null {
  const gap = found?.row.gap.value ?? Infinity;
  if (found === undefined || gap >= clearance - NOTHING) return null;
  const turn = Math.abs(found.thingTurn) > NOTHING ? found.thingTurn : found.frameTurn;
  const data = {
    name: found.row.name,
    thing: name,
    ...(Math.abs(turn) > NOTHING ? { swung: turn * DEGREES } : {}),
  };
  return gap < -NOTHING
    ? finding('gap-struck', 'stop', field, { ...data, value: -gap })
    : finding('gap-under', 'caution', field, { ...data, value: gap, low: clearance });
}

/** Whether the wanted frame itself has too little room for a post where it stands: that is said with the frame. */
function isStruckAtRest(found: FoundGap | undefined, thing: LaidThing, { source, laid }: SiteStudy): boolean {
  const { frame } = laid;
  if (found === undefined || frame === null || found.row.of === 'leg' || !isKeptClear(thing)) return false;
  if (Math.hypot(found.thingTurn, found.frameTurn) > NOTHING) return false;
  const least = source.tube.outsideDiameter / 2 + (thing.clearance ?? 0);
  return source.wanted.members.some(({ centreline }) => {
    const line = movedLine(frame.motion, centreline);
    const gap = leastGap({ line, solid: thing.body, lineTurns: null, solidTurns: null }, { fine: FINE });
    return gap !== undefined && gap.distance < least - NOTHING;
  });
}
