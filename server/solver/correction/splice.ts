import type { FrameGeometry, MemberGeometry, Spot } from '../frame/frame-geometry.ts';
import type { Vector3 } from '../geometry/vector.ts';
import { crossingsOf, type Crossing } from './crossings.ts';
import { leastSquares } from './least-squares.ts';
import { closeAbout, meetMovedCopy, type ClosedJoint } from './moved-copy.ts';
import { bestFit, compose, inverse, movePoint, STILL, type PlaneMotion } from './plane-motion.ts';

/** A joint to be made: the member, the piece it stands on, and the two bodies either side of it. */
export type JointPlace = {
  readonly member: MemberGeometry;
  readonly crossing: Crossing;
  /** Where the cut is wanted [mm]; a curved member moves it to where it meets its moved copy. */
  readonly at: number;
  readonly before: string;
  readonly after: string;
};

/** A closed splice: every body's motion, and its joints. */
export type Splice = {
  readonly motions: ReadonlyMap<string, PlaneMotion>;
  readonly joints: readonly { readonly place: JointPlace; readonly closed: ClosedJoint }[];
};

/** A spot of the frame as it came back, and where the wanted frame has it. */
export type Target = { readonly spot: Spot; readonly wanted: Vector3 };

/** What each residual is divided by: the tape [mm], hi-lo [mm] and kink [rad] that begin to matter. */
const HI_LO_SCALE = 0.02; // common practice, no source: a fingernail finds less than a tenth of a millimetre
const KINK_SCALE = Math.PI / 180; // ISO 5817 imperfection 508, fatigue annex: 1 degree at the strictest level
const PLACE_SCALE = 20; // a joint may wander this far along a curved member before it counts as much as 1 mm

/** How the cuts are laid: `two` puts a loose middle piece into each curved member; `turned` lets the right side turn. */
export type SpliceStyle = { readonly two: boolean; readonly turned: boolean; readonly spread: number };

/** The joints that cutting along x = cutAt asks for. */
export function jointPlaces(frame: FrameGeometry, cutAt: number, style: SpliceStyle): JointPlace[] {
  return crossingsOf(frame.members, cutAt).flatMap((crossing, index) => {
    const member = frame.members.find((one) => one.name === crossing.member);
    if (member === undefined) return [];
    const [first, second] = crossing.heading > 0 ? ['left', 'right'] : ['right', 'left'];
    const place = (at: number, before = first ?? '', after = second ?? ''): JointPlace => ({
      member,
      crossing,
      at,
      before,
      after,
    });
    if (!style.two || crossing.piece.kind === 'straight') return [place(crossing.station)];
    const middle = `middle ${index + 1}`;
    return [
      place(crossing.station - style.spread / 2, first, middle),
      place(crossing.station + style.spread / 2, middle, second),
    ];
  });
}

/** Body that a spot belongs to: by the joints on its member before and after it. */
export function bodyOf(spot: Pick<Spot, 'member' | 'station' | 'point'>, places: readonly JointPlace[], cutAt: number) {
  const own = places.filter((place) => place.member.name === spot.member).sort((a, b) => a.at - b.at);
  if (own.length === 0) return spot.point.x < cutAt ? 'left' : 'right';
  const following = own.find((place) => place.at > spot.station);
  return following?.before ?? own.at(-1)?.after ?? 'left';
}

/**
 * Closes a flat frame along a cut so that its spots come as near to the wanted ones as the cuts allow: the left
 * body is held, the others move in the plane. Unknowns are the motions; each joint then stands where its member
 * meets its own moved copy. Weighed against each other, each over what begins to matter: distance of every spot
 * from its target (the whole frame laid on the targets by best fit), hi-lo, kink, and how far a joint wandered.
 */
export function solveSplice(input: {
  targets: readonly Target[];
  places: readonly JointPlace[];
  cutAt: number;
  tape: number;
  style: SpliceStyle;
}): Splice {
  const { places, targets, cutAt, style } = input;
  const bodies = [...new Set(places.flatMap((place) => [place.before, place.after]))].filter((body) => body !== 'left');
  const tape = Math.max(input.tape, 0.1);
  const spots = targets.map((target) => ({ ...target, body: bodyOf(target.spot, places, cutAt) }));
  const start = firstGuess(spots);
  const free = (body: string) => (style.turned || body.startsWith('middle') ? 3 : 2);
  const unknowns = bodies.flatMap((body) => {
    const share = body === 'right' ? 1 : 0.5;
    const values = [start.shift.x * share, 0, 0].slice(0, free(body));
    return values.map((value, index) => ({ start: value, size: index === 2 ? 1e-3 : 1 }));
  });
  const spliceFor = (values: readonly number[]): Splice => {
    const motions = new Map<string, PlaneMotion>([['left', STILL]]);
    let next = 0;
    for (const body of bodies) {
      const [x = 0, y = 0, turn = 0] = values.slice(next, next + free(body));
      motions.set(body, { turn: free(body) === 3 ? turn : 0, shift: { x, y, z: 0 } });
      next += free(body);
    }
    const joints: Splice['joints'][number][] = [];
    for (const place of places) {
      const relative = compose(inverse(motions.get(place.before) ?? STILL), motions.get(place.after) ?? STILL);
      const closed = closeAt(place, relative);
      if (closed !== undefined) joints.push({ place, closed });
    }
    return { motions, joints };
  };
  const residualsOf = (values: readonly number[]) => {
    const splice = spliceFor(values);
    const moved = spots.map((one) => movePoint(splice.motions.get(one.body) ?? STILL, one.spot.point));
    const lay = bestFit(moved.map((from, index) => ({ from, to: spots[index]?.wanted ?? from })));
    const residuals: number[] = [];
    for (const [index, from] of moved.entries()) {
      const at = movePoint(lay, from);
      const wanted = spots[index]?.wanted ?? at;
      residuals.push((at.x - wanted.x) / tape, (at.y - wanted.y) / tape);
    }
    for (const { place, closed } of splice.joints) {
      const wandered = (closed.stationA + closed.stationB) / 2 - place.at;
      residuals.push(closed.hiLo / HI_LO_SCALE, closed.kink / KINK_SCALE, wandered / PLACE_SCALE);
    }
    return residuals;
  };
  return spliceFor(unknowns.length === 0 ? [] : leastSquares(unknowns, residualsOf));
}

/** On a curve the joint stands where it meets its moved copy; on a straight the place is free and stays as wanted. */
function closeAt(place: JointPlace, motion: PlaneMotion): ClosedJoint | undefined {
  const { centreline } = place.member;
  if (place.crossing.piece.kind === 'straight') return closeAbout(centreline, motion, place.at);
  const half = (-motion.shift.x * place.crossing.heading) / 2;
  const near = { stationA: place.at - half, stationB: place.at + half };
  return meetMovedCopy(centreline, motion, near) ?? closeAbout(centreline, motion, place.at);
}

/** How the right side would have to move, joints left aside. */
function firstGuess(spots: readonly (Target & { body: string })[]): PlaneMotion {
  const fit = (body: string) =>
    bestFit(spots.filter((one) => one.body === body).map((one) => ({ from: one.spot.point, to: one.wanted })));
  return compose(inverse(fit('left')), fit('right'));
}
