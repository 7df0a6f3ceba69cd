import type { Frame } from '../../job/frame.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { mirrorFrame } from '../frame/mirror-frame.ts';
import { isDieBend, type Piece } from '../geometry/centreline.ts';
import { frameMaker, type FrameMaker } from '../returned/frame-of-lines.ts';
import { sizesOf } from '../returned/sizes.ts';
import { atMarks, type ShopHabits } from './at-marks.ts';
import { canBe, madeMembers, type Bent } from './made-frame.ts';
import { readOtherwise } from './read-otherwise.ts';
import type { SetFrom } from './saddle-seat.ts';
import type { Slip } from './slip.ts';
import { bentBy, type BendSlip } from './bent-by.ts';

/** What a shop would work with: how a frame is drawn, and what it does with it. */
export type ShopContext = ShopHabits & {
  readonly draw: (frame: Frame) => FrameGeometry | null;
  readonly outsideDiameter: number;
};

/** A frame on its way through the shop: the sketch as it was read, drawn, and with its members as they were bent. */
export type Made = {
  readonly sketch: Frame;
  readonly drawn: FrameGeometry;
  readonly bent: Bent;
  /** Its members; those that sit on others set out from the ends of those, or from their bends. */
  readonly members: (setFrom: SetFrom) => readonly MemberGeometry[];
  /** The whole frame with its sizes, feet and corners; its saddles set out from the ends unless it is said otherwise. */
  readonly frame: (setFrom?: SetFrom) => FrameGeometry;
};

/** A way in which a sketch or its marks are taken wrong, with the frame that it makes; null: it cannot be made. */
export type Misreading = {
  readonly slips: readonly [Slip, ...Slip[]];
  /** Two slips that share one of these cannot both happen. */
  readonly excludes: readonly string[];
  /** Slips happen in this order: reading, marking, bending. */
  readonly order: number;
  readonly made: Made | null;
  /** The same slip on top of others before it. */
  readonly after: (before: Made) => Made | null;
};

/**
 * Every classic way of taking a sketch wrong: each size read by either other reference, and the slips at the marks and
 * at the machine, bent in software through the same straights and arcs as the plan. The slips are common practice, no
 * source.
 *
 * @param wanted the frame as wanted
 */
export function misreadings(sketch: Frame, wanted: FrameGeometry, shop: ShopContext): Misreading[] {
  const makers = new Map<FrameGeometry, FrameMaker>();
  const makerOf = (drawn: FrameGeometry): FrameMaker => {
    const known = makers.get(drawn) ?? frameMaker(drawn, sizesOf(drawn, shop.outsideDiameter));
    makers.set(drawn, known);
    return known;
  };
  const made = (read: Frame, drawn: FrameGeometry, bent: Bent): Made => {
    const members = (setFrom: SetFrom) => madeMembers(drawn, bent, setFrom);
    const frame = (setFrom: SetFrom = 'ends'): FrameGeometry => {
      if (bent.size === 0) return drawn;
      return makerOf(drawn)(
        members(setFrom).map(({ centreline }) => centreline),
        drawn.planeNormal !== null,
      );
    };
    return { sketch: read, drawn, bent, members, frame };
  };
  const asWanted = made(sketch, wanted, new Map());
  const single = (one: Omit<Misreading, 'made' | 'slips'> & { readonly slip: Slip }): Misreading => ({
    slips: [one.slip],
    excludes: one.excludes,
    order: one.order,
    made: one.after(asWanted),
    after: one.after,
  });
  const read = readOtherwise(sketch).map(({ slip, fields, read: readAs }) =>
    single({
      slip: { key: slip, fields, dieRadius: null, bend: null },
      excludes: fields,
      order: 0,
      after: (before) => {
        const other = readAs(before.sketch);
        const drawn = shop.draw(other);
        return drawn === null || !samePieces(drawn, wanted) ? null : made(other, drawn, new Map());
      },
    }),
  );
  if (!wanted.members.some(({ centreline }) => centreline.pieces.some(isDieBend))) return read;
  const bend = ({ slip, excludes, order, bends }: BendSlip): Misreading =>
    single({
      slip,
      excludes,
      order,
      after: (before) => {
        const bent = bentBy(before.drawn, before.bent, bends, shop.from);
        if (bent === null || ![...bent.values()].every(canBe)) return null;
        return made(before.sketch, before.drawn, bent);
      },
    });
  return [...read, ...atMarks(wanted, shop).map(bend), ...otherHand()];

  /** A frame of several tubes in space made for the other side; of one alone it is rotations counted the other way. */
  function otherHand(): Misreading[] {
    if (wanted.planeNormal !== null || wanted.members.length < 2) return [];
    const after = (before: Made): Made => made(before.sketch, mirrorFrame(before.drawn), before.bent);
    const slip = { key: 'other-hand', fields: [], dieRadius: null, bend: null } as const;
    return [single({ slip, excludes: ['rotations'], order: AFTER_READING, after })];
  }
}

/** What happens after the sketch was read and before anything is marked. */
const AFTER_READING = 0.5;

/** Whether a frame has the members and the pieces of another. */
const samePieces = (one: FrameGeometry, other: FrameGeometry): boolean =>
  one.members.length === other.members.length &&
  one.members.every(({ name, centreline }, place) => {
    const like = other.members[place];
    return like?.name === name && kindsOf(centreline.pieces) === kindsOf(like.centreline.pieces);
  });

const kindsOf = (pieces: readonly Piece[]): string =>
  pieces.map((piece) => (piece.kind === 'straight' ? piece.kind : piece.made)).join();
