import type { Way } from '../../plan/correction.ts';
import type { Joint } from '../../plan/joint.ts';
import type { Figure } from '../../plan/figure.ts';
import type { CutPiece } from '../../plan/stock.ts';
import { figure, input } from '../figure.ts';
import { extraFor, measureCheck, type Check, type FrameGeometry, type Spot } from '../frame/frame-geometry.ts';
import { withinHalfTurn } from '../geometry/angle.ts';
import { placeAt, type Centreline } from '../geometry/centreline.ts';
import { bestMotion, moved, turned, type RigidMotion } from '../geometry/rigid-motion.ts';
import { add, cross, length, scale, subtract, type Vector3 } from '../geometry/vector.ts';
import type { WeldPlace } from '../welding/weld-sites.ts';
import type { CorrectedFrame, CorrectionTarget, Post } from './corrected.ts';
import { postRoom, type PostRoom } from './post-room.ts';
import { toeOf } from './toe.ts';

/** New tube as it is sawn off a bar: a member, a length of one, or a let-in piece. */
export type EffortPiece = Pick<CutPiece, 'kind' | 'of' | 'part' | 'parts' | 'length'>;

/** What a way needs of the shop: welds, cuts, bends, saddles to be made anew, and new tube. */
export type Effort = {
  readonly welds: number;
  readonly cuts: number;
  readonly bends: number;
  readonly pieces: readonly EffortPiece[];
  /** Length of the tubes that are bent, or have a bend turned [mm]. */
  readonly bentTube: number;
  /** Where it welds, on the members of the frame as it came back (or of the new one). */
  readonly joints: readonly WeldPlace[];
};

/** A way without what follows from its effort, from the shop's rates and from the other ways. */
export type WayDraft = Omit<
  Way,
  'purgeSetups' | 'purgeGas' | 'minutes' | 'cost' | 'costAtLeast' | 'days' | 'within' | 'unbeaten' | 'risks'
> & {
  readonly effort: Effort;
  /** What its bands come from. */
  readonly doubts: readonly Doubt[];
};

/**
 * One more thing that is not known, with what comes out where it is one standard deviation (or one ±) off, once for
 * each independent direction. Everything is taken to be independent of everything else.
 */
export type Doubt = { readonly from: string; readonly outcomes: readonly Outcome[] };

/** The same of which no more is known than how the frame then lies. */
export type LaidDoubt = { readonly from: string; readonly outcomes: readonly Pick<Outcome, 'corrected' | 'lay'>[] };

/** What a corrected frame is measured against. Targets stand on `actual`. */
export type JudgeContext = {
  readonly wanted: FrameGeometry;
  readonly actual: FrameGeometry;
  readonly targets: readonly CorrectionTarget[];
  readonly posts: readonly Post[];
};

/** A corrected frame in numbers [mm, rad]; lists are in the order of the context's targets, posts and wanted checks. */
export type Outcome = {
  readonly corrected: CorrectedFrame;
  /** Lays the corrected frame on the wanted one: least sum of (distance / tolerance)², guides left out. */
  readonly lay: RigidMotion;
  /** From where a target must be to where it is. */
  readonly targets: readonly { readonly target: CorrectionTarget; readonly off: Vector3 }[];
  /** Room left beyond what a post asks for; negative where a tube comes too near. Found for those who look at it. */
  readonly rooms: () => readonly ({ readonly post: Post } & PostRoom)[];
  /** How much more the first two feet turn towards each other than on the wanted frame; `wantedToe` is that one's. */
  readonly toe: number;
  readonly wantedToe: number;
  /**
   * Check dimensions, centre to centre. `check` is the wanted frame's, `field` where it is read on the actual one, and
   * `extra` what the reference of the wanted one adds to it now.
   */
  readonly sizes: readonly {
    readonly check: Check;
    readonly field: string;
    readonly wanted: number;
    readonly after: number;
    readonly extra: number;
  }[];
};

/** Lays a corrected frame on the wanted one and measures what is left over. Pure numbers, no bands. */
export function judge(context: JudgeContext, corrected: CorrectedFrame): Outcome {
  const { wanted, actual, targets, posts } = context;
  const lay = layOn(wanted, actual, targets, corrected);
  const placed = ({ member, station, point }: Spot) => moved(corrected.motionAt(member, station), point);
  const outward = (foot: Spot) =>
    turned(lay, turned(corrected.motionAt(foot.member, foot.station), outwardAt(actual, foot)));
  const wantedToe = toeOf(
    wanted,
    wanted.feet.map((foot) => outwardAt(wanted, foot)),
  );
  return {
    corrected,
    lay,
    targets: targets.map((target) => ({
      target,
      off: subtract(moved(lay, targetPoint(target, corrected)), target.wanted),
    })),
    rooms: () => {
      const parts = posts.length === 0 ? [] : partsOf(corrected);
      return leastRooms(
        posts.flatMap((post) => {
          const room = postRoom(post, parts, lay);
          return room === undefined ? [] : [{ post, ...room }];
        }),
      );
    },
    toe: withinHalfTurn(toeOf(wanted, actual.feet.map(outward)) - wantedToe),
    wantedToe,
    sizes: wanted.checks.flatMap((check) => {
      const isSame = (other: Check) => other.key === check.key && other.index === check.index;
      const own = actual.checks.find(isSame);
      if (own === undefined) return [];
      const now = corrected.checks?.find(isSame);
      const after = now === undefined ? measureCheck(own, placed) : measureCheck(now);
      const extra = extraFor(now ?? own, check.reference);
      return [{ check, field: own.field, wanted: measureCheck(check), after, extra }];
    }),
  };
}

/** The centrelines of a corrected frame, member after member. */
export const partsOf = ({ members }: CorrectedFrame): Centreline[] => members.flatMap(({ parts }) => parts);

type Rooms = ReturnType<Outcome['rooms']>;

/** Of a post that stands at several places, the one with the least room. */
function leastRooms(rooms: Rooms): Rooms {
  const least = new Map<string, Rooms[number]>();
  for (const one of rooms) if (one.room < (least.get(one.post.field)?.room ?? Infinity)) least.set(one.post.field, one);
  return [...least.values()];
}

/** Where a target is on a corrected frame that is not laid on the wanted one yet. */
export const targetPoint = ({ spot, off }: CorrectionTarget, { motionAt }: Pick<CorrectedFrame, 'motionAt'>): Vector3 =>
  moved(motionAt(spot.member, spot.station), add(spot.point, off));

/** The motion that lays a corrected frame on the wanted one; a frame in the plane of the wanted one stays in it. */
export function layOn(
  wanted: FrameGeometry,
  actual: FrameGeometry,
  targets: readonly CorrectionTarget[],
  corrected: Pick<CorrectedFrame, 'motionAt'>,
): RigidMotion {
  const pairs = targets.flatMap((target) =>
    target.kind === 'guide'
      ? []
      : [{ from: targetPoint(target, corrected), to: target.wanted, weight: 1 / target.tolerance ** 2 }],
  );
  return bestMotion(pairs, commonPlane(wanted, actual));
}

/** Two planes count as one up to this between their normals [rad]; far below what a bender can hold. */
const SAME_PLANE = 1e-9;

/** Normal of the plane that both frames lie in; null where one of them is in space. */
export function commonPlane(
  { planeNormal: one }: FrameGeometry,
  { planeNormal: other }: FrameGeometry,
): Vector3 | null {
  return one !== null && other !== null && length(cross(one, other)) < SAME_PLANE ? one : null;
}

/** Direction out of the tube at a free end. */
export function outwardAt(frame: FrameGeometry, foot: Pick<Spot, 'member' | 'station'>): Vector3 {
  const line = frame.members.find((member) => member.name === foot.member)?.centreline;
  const tangent = line === undefined ? undefined : placeAt(line, foot.station)?.tangent;
  if (line === undefined || tangent === undefined) return { x: 0, y: -1, z: 0 };
  return foot.station > line.length / 2 ? tangent : scale(tangent, -1);
}

/** The largest of some figures of the joints, as one figure. */
export function largest(joints: readonly Joint[], pick: (joint: Joint) => Figure, unit: 'deg' | 'mm'): Figure {
  const value = joints.reduce((most, joint) => Math.max(most, pick(joint).value), 0);
  return figure(value, unit, 'max', [input('n', 'joints', joints.length, 'count')], ['geometry']);
}

export const countFigure = (value: number, name: string): Figure =>
  figure(value, 'count', 'n', [input('n', name, value, 'count')], ['geometry']);
