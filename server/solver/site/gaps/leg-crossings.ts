import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { Centreline } from '../../geometry/centreline.ts';
import { leastDistance, stretches, type Stretch } from '../../geometry/least-distance.ts';
import { leastGap } from '../../geometry/least-gap.ts';
import { sliceCentreline } from '../../geometry/slice.ts';
import { hiddenOf } from '../../views/hidden.ts';
import type { LaidSite, MadeLine } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { FINE } from './thing-gap.ts';
import { legLine } from './gap-tubes.ts';
import { besideHead } from './beside-head.ts';
import { legBar, type LegBar } from './leg-bar.ts';

/** A leg that passes a tube nearer than this is told of [mm]: our own choice, what a person can still fit and weld past. */
const NEAR = 5;

/** Gaps are negative from here on [mm]; rounding. */
const NOTHING = 1e-6;

/** A tube that a leg may run into: the frame's, or another leg. */
type Obstacle = { readonly name: string; readonly lines: readonly Centreline[]; readonly radius: number };

/**
 * Legs that run into a tube of the frame or into another leg, or pass it too closely, where the frame stands. A leg may
 * touch the tube that it sits on beside its head, and nowhere else; tubes of the frame end at the tubes that they sit on.
 *
 * @returns for each leg the tube that it comes nearest to, and of two legs the later one
 */
export function legCrossings(study: SiteStudy): Finding[] {
  const { frame, legs } = study.laid;
  if (frame === null) return [];
  const bars = legs.map((leg, index) => {
    const typed = study.source.site.legs[index];
    return leg === null || typed === undefined
      ? undefined
      : legBar(leg, typed.head.end, frame, study.source.tube.outsideDiameter / 2);
  });
  return bars.flatMap((bar, index) => {
    if (bar === undefined) return [];
    const obstacles = [
      ...membersBeside(bar, frame, study),
      ...bars.slice(0, index).flatMap((other) => (other === undefined ? [] : asObstacle(other))),
    ];
    return said(bar, obstacles);
  });
}

function membersBeside(bar: LegBar, { lines }: NonNullable<LaidSite['frame']>, { source }: SiteStudy): Obstacle[] {
  const { outsideDiameter } = source.tube;
  const radius = outsideDiameter / 2;
  return lines.map((line) => ({
    name: line.name,
    lines: line.name === bar.leg.member ? besideHead(line, bar, radius + NEAR) : [shownPart(line, source)],
    radius,
  }));
}

/** A tube without what of it disappears in the tubes that it sits on. */
function shownPart({ name, centreline }: MadeLine, { wanted, tube }: SiteStudy['source']): Centreline {
  const hidden = hiddenOf(
    wanted.members.find((member) => member.name === name),
    tube.outsideDiameter,
  );
  if (hidden.start === 0 && hidden.finish === 0) return centreline;
  return sliceCentreline(centreline, hidden.start, Math.max(hidden.start, centreline.length - hidden.finish));
}

function asObstacle({ leg, end }: LegBar): Obstacle[] {
  const line = legLine({ foot: leg.foot, head: end });
  return line === undefined ? [] : [{ name: leg.name, lines: [line], radius: leg.outsideDiameter / 2 }];
}

function said(bar: LegBar, obstacles: readonly Obstacle[]): Finding[] {
  const axis = legLine({ foot: bar.leg.foot, head: bar.end })?.pieces.flatMap(stretches)[0];
  if (axis === undefined) return [];
  let [least, other] = [Infinity, ''];
  for (const obstacle of obstacles) {
    const gap = gapTo(bar, axis, obstacle);
    if (gap < least) [least, other] = [gap, obstacle.name];
  }
  if (least >= NEAR) return [];
  const { name, field } = bar.leg;
  return least < -NOTHING
    ? [finding('leg-strikes', 'stop', field, { name, other, value: -least })]
    : [finding('leg-near', 'note', field, { name, other, value: Math.max(0, least), low: NEAR })];
}

/** Between the surfaces of a leg and a tube [mm]; endless where they are further apart than what is told. */
function gapTo({ solid }: LegBar, axis: Stretch, { lines, radius }: Obstacle): number {
  const apart = solid.radius + radius + NEAR;
  return Math.min(
    ...lines.map((line) => {
      // axes that stay apart are by far the most, and soon found
      const isNear = line.pieces.some((piece) =>
        stretches(piece).some((stretch) => leastDistance(axis, stretch, apart, FINE) < apart),
      );
      const gap = isNear ? leastGap({ line, solid, lineTurns: null, solidTurns: null }, { fine: FINE }) : undefined;
      return gap === undefined ? Infinity : gap.distance - radius;
    }),
    Infinity,
  );
}
