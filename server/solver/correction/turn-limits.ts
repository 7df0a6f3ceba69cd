import type { SetUp } from '../bending/set-up.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { RADIANS } from '../geometry/angle.ts';
import { isDieBend, type Piece } from '../geometry/centreline.ts';

/** An arc of a frame that can be bent again, `piece` counted in its member; die bends and crowns counted by themselves. */
export type TurnableArc = {
  readonly member: string;
  readonly piece: number;
  readonly made: 'die' | 'rolled';
  readonly bend: number;
};

/** Why an arc is not turned further, or not at all. */
type TurnReason = 'grip' | 'straight' | 'machine' | 'opening' | 'crown';

/** How far an arc may be turned: opened down to `low` (negative), further up to `high` [rad], and what ends that. */
export type TurnLimit = {
  readonly arc: TurnableArc;
  readonly low: number;
  readonly high: number;
  readonly lowReason: TurnReason;
  readonly highReason: TurnReason;
  /** The straight that the reason is about, and what it should be at least [mm]; 0 for the others. */
  readonly straight: number;
  readonly least: number;
};

/** What the bender has: the machine as it is set up, and which members go in finish first. */
export type RebendShop = {
  readonly machine: Pick<SetUp, 'gripLength' | 'leastStraight' | 'largestAngle' | 'angleScatter'>;
  readonly fromFinish: ReadonlySet<string>;
};

/**
 * Opening a formed bend by more than this wrinkles or flattens work-hardened stainless [rad]: 3 degrees, common practice,
 * no source; ask the shop.
 */
export const MOST_OPENING = 3 * RADIANS;

/** A crown is rolled again to between half and twice its curvature: beyond that it is another frame; our own choice. */
const CROWN_SHARE = { least: 0.5, most: 2 };

/** Every arc of a frame, in order; those of closed members are left out, since nothing of them can swing. */
export const arcsOf = (frame: FrameGeometry): TurnableArc[] =>
  frame.members
    .filter(({ closed }) => !closed)
    .flatMap((member) => {
      const count = { die: 0, rolled: 0 };
      return member.centreline.pieces.flatMap((piece, index): TurnableArc[] => {
        if (piece.kind !== 'arc') return [];
        count[piece.made] += 1;
        return [{ member: member.name, piece: index, made: piece.made, bend: count[piece.made] }];
      });
    });

/**
 * How far each arc may be turned. A die bend needs a straight (or a crown) before it that the clamp can hold, the clamp's
 * own length before the first bend and the machine's least straight before the others; turned further it uses tube that
 * follows it, of which the next bend's clamp needs some; the machine has a largest angle.
 */
export function turnLimits(frame: FrameGeometry, shop: RebendShop): TurnLimit[] {
  const members = new Map(frame.members.map((member) => [member.name, member]));
  return arcsOf(frame).flatMap((arc) => {
    const member = members.get(arc.member);
    return member === undefined ? [] : [limitOf(arc, member, shop)];
  });
}

function limitOf(
  arc: TurnableArc,
  { name, centreline }: MemberGeometry,
  { machine, fromFinish }: RebendShop,
): TurnLimit {
  const { pieces } = centreline;
  const piece = pieces[arc.piece];
  const free = { arc, lowReason: 'opening', highReason: 'machine', straight: 0, least: 0 } as const;
  if (piece?.kind !== 'arc') return { ...free, low: 0, high: 0 };
  if (piece.made === 'rolled') {
    const low = (CROWN_SHARE.least - 1) * piece.angle;
    const high = (CROWN_SHARE.most - 1) * piece.angle;
    return { ...free, low, high, lowReason: 'crown', highReason: 'crown' };
  }
  const step = fromFinish.has(name) ? -1 : 1;
  const before = pieces[arc.piece - step];
  const after = pieces[arc.piece + step];
  const others = bendsBeyond(pieces, arc.piece, step);
  const grip = others.before ? machine.leastStraight : machine.gripLength;
  const held = clampable(before);
  if (held < grip || before === undefined)
    return { ...free, low: 0, high: 0, lowReason: 'grip', highReason: 'grip', straight: held, least: grip };
  const follows = clampable(after);
  // the next bend, if it is turned too, is held by what is left of this straight
  const kept = others.after ? Math.min(machine.leastStraight, follows) : 0;
  const byTube = Math.max(0, (follows - kept) / piece.radius);
  const byMachine = Math.max(0, machine.largestAngle * RADIANS - piece.angle);
  // a bend that nothing follows would leave a gap where it is opened
  const low = follows > 0 ? -Math.min(MOST_OPENING, piece.angle / 2) : 0;
  const high = Math.min(byTube, byMachine);
  const highReason = byTube < byMachine ? ('straight' as const) : ('machine' as const);
  return {
    ...free,
    low,
    high,
    lowReason: follows > 0 ? 'opening' : 'straight',
    highReason,
    straight: follows,
    least: kept,
  };
}

/** Length of tube that a clamp can hold: a straight, or a crown, which is nearly one [mm]. */
const clampable = (piece: Piece | undefined): number => (piece === undefined || isDieBend(piece) ? 0 : piece.length);

function bendsBeyond(pieces: readonly Piece[], at: number, step: 1 | -1): { before: boolean; after: boolean } {
  const [low, high] = [pieces.slice(0, at).some(isDieBend), pieces.slice(at + 1).some(isDieBend)];
  return step > 0 ? { before: low, after: high } : { before: high, after: low };
}
