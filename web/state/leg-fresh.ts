import type { FootEnd, Leg } from '../../server/job/leg.ts';
import type { Site } from '../../server/job/site.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { words } from '../../server/language/words.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import type { Point } from '../../server/plan/figure.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { StandingPlan } from '../../server/plan/site.ts';
import { mirrorBetween, mirroredDirection, mirroredPoint } from './leg-mirror.ts';
import { roughPlace, twinPlace } from './leg-place.ts';
import { uprightLean } from './site-directions.ts';
import { freeName, freshName } from './site-names.ts';
import { samePlace } from './tube-places.ts';

export const LEGS = '/site/legs';

/** A fresh foot stands so far below the frame's end [mm]: a place to type over, our own choice. */
const BELOW = 600;

/** Starting values to be typed over [mm]; our own choice. */
const MITRED: FootEnd = { end: 'mitre', plate: 0 };
const SOCKET = 40;
export const FRESH_FITTING: Leg['head']['end'] = { end: 'eye', takes: 30 };
export const freshAdjust = (by: 'thread' | 'slip'): NonNullable<Leg['adjust']> => ({ by, adds: 60, travel: 15 });

/** The foot cut in another way; a plate under it stays. */
export const footEndAs = (end: FootEnd['end'], before: FootEnd): FootEnd =>
  end === 'socket'
    ? { end, depth: before.end === 'socket' ? before.depth : SOCKET }
    : { end, plate: before.end === 'socket' ? 0 : before.plate };

type Motion = Pick<StandingPlan, 'origin' | 'x' | 'y' | 'z'>;

/** As a new job places it, seen from above with ahead up, while nobody knows how it stands. */
const UNPLACED: Motion = {
  origin: { x: 0, y: 0, z: 0 },
  x: { x: 0, y: -1, z: 0 },
  y: { x: 1, y: 0, z: 0 },
  z: { x: 0, y: 0, z: 1 },
};

const stood = ({ x, y, z }: Point, motion: Motion): Point => {
  const along = (axis: 'x' | 'y' | 'z'): number =>
    motion.origin[axis] + x * motion.x[axis] + y * motion.y[axis] + z * motion.z[axis];
  return { x: along('x'), y: along('y'), z: along('z') };
};

const rounded = ({ x, y, z }: Point): Point => ({ x: Math.round(x), y: Math.round(y), z: Math.round(z) });

/** Places that a leg is put to, one after another: the outermost bends of every tube, then the middle of each straight. */
function heads(members: readonly MemberPlan[]): readonly TubePlace[] {
  const place = (member: string, spot: TubePlace['spot'], number: number): TubePlace => ({
    member,
    spot,
    number,
    distance: 0,
  });
  return [
    ...members.flatMap(({ name, closed, bends }) =>
      closed || bends.length === 0 ? [] : [place(name, 'bend-start', 1), place(name, 'bend-end', bends.length)],
    ),
    ...members.flatMap(({ name, pieces }) =>
      pieces.flatMap(({ kind }, index) => (kind === 'straight' ? [place(name, 'middle', index + 1)] : [])),
    ),
  ];
}

/** A leg to a plan: null while there is no frame that it could carry. */
export function freshLeg(site: Site, plan: Plan | null): Leg | null {
  const members = plan?.frame?.members ?? [];
  const motion = plan?.site?.standing ?? UNPLACED;
  const taken = site.legs.flatMap(({ head }) => ('named' in head.at ? [] : [head.at]));
  const isFree = (place: TubePlace): boolean => !taken.some((one) => samePlace(one, place));
  const mirrored = mirroredLeg(site, plan, { motion, isFree });
  if (mirrored !== null) return mirrored;
  const all = heads(members);
  const at = all.find(isFree) ?? all[0];
  const member = members.find((one) => one.name === at?.member);
  const head = at && member && roughPlace(at, member);
  if (at === undefined || member === undefined || head === undefined) return null;
  return {
    name: freshLegName(site, at, { member, motion }),
    foot: { at: footBelow(at, member, motion), surface: uprightLean, end: MITRED, held: 'pinned' },
    head: { at, end: { end: 'saddle' }, held: 'pinned' },
    tube: null,
    adjust: null,
  };
}

/** A leg less far from its twin across the structure is on neither side [mm]; our own choice. */
const MIDDLE = 1;

/** 'port leg' by the side of the frame that its head is on, 'leg 3' where that has no sides across the structure. */
function freshLegName(
  { sides, legs }: Site,
  at: TubePlace,
  { member, motion }: { member: MemberPlan; motion: Motion },
): string {
  const taken = legs.map(({ name }) => name);
  const twin = twinPlace(at, member);
  const [here, there] = [roughPlace(at, member), twin === null ? undefined : roughPlace(twin, member)];
  const port = here && there ? stood(here, motion).y - stood(there, motion).y : 0;
  if (Math.abs(port) < MIDDLE) return freshName(words('leg.fresh'), taken);
  const side = words(`side.${sides}.${port > 0 ? 'port' : 'starboard'}`);
  return freeName(words('leg.freshOn', { side }), taken);
}

/** A leg shorter than this would be all head and foot [mm]. */
const TOO_SHORT = 150;

/** Below the frame's end on that side; where the frame itself hangs down there, below the head. */
function footBelow(at: TubePlace, member: MemberPlan, motion: Motion): Point {
  const head = stood(roughPlace(at, member) ?? UNPLACED.origin, motion);
  const spot = at.spot === 'bend-end' ? 'finish' : 'start';
  const end = roughPlace({ ...at, spot: at.spot === 'middle' ? 'middle' : spot }, member);
  const foot = stood(end ?? UNPLACED.origin, motion);
  const near = Math.hypot(foot.x - head.x, foot.y - head.y, foot.z - BELOW - head.z) < TOO_SHORT;
  const above = near ? head : foot;
  return rounded({ ...above, z: above.z - BELOW });
}

/** The last leg that has no twin yet, on the other side of its tube; null where none can be mirrored. */
function mirroredLeg(
  site: Site,
  plan: Plan | null,
  { motion, isFree }: { motion: Motion; isFree: (place: TubePlace) => boolean },
): Leg | null {
  for (const [index, leg] of [...site.legs.entries()].reverse()) {
    const planned = plan?.site?.legs.find(({ field }) => field === `${LEGS}/${String(index)}`);
    const { at } = leg.head;
    if ('named' in at) continue;
    const member = plan?.frame?.members.find(({ name }) => name === at.member);
    const twin = member === undefined ? null : twinPlace(at, member);
    if (member === undefined || twin === null || !isFree(twin)) continue;
    const [from, to] = [roughPlace(at, member), roughPlace(twin, member)];
    const mirror = from && to && mirrorBetween(stood(from, motion), stood(to, motion));
    const foot = planned?.footPoint ?? ('named' in leg.foot.at ? null : leg.foot.at);
    if (mirror === undefined || mirror === null || foot === null) continue;
    return {
      ...leg,
      name: freshLegName(site, twin, { member, motion }),
      foot: {
        ...leg.foot,
        at: mirroredPoint(foot, mirror),
        surface: mirroredDirection(leg.foot.surface, mirror),
      },
      head: { ...leg.head, at: twin },
    };
  }
  return null;
}
