import type { SlipKey } from '../../plan/slip.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { isDieBend, type Piece } from '../geometry/centreline.ts';
import type { Bends, BendSlip } from './bent-by.ts';
import { cutToApexes, onOtherDie, startsAsEnds, withAngles, withStretch, wrongMarks } from './wrong-marks.ts';
import { bentOtherWay, fromOtherEnd, rotatedOtherWay, toSupplements } from './wrong-turns.ts';

/** What a shop does with every member: the angle lost and won, the growth of a bend, the bar as it is sawn, its other dies. */
export type ShopHabits = {
  /** What is left of an angle that the machine was told without overbending [rad]. */
  readonly released: (told: number) => number;
  /** What the machine must be told for a wanted angle [rad]. */
  readonly told: (wanted: number) => number;
  /** What a bend of this finished angle [rad] is longer than the tube that it takes [mm]. */
  readonly stretch: (angle: number) => number;
  /** Which end of a member its marks are laid out from. */
  readonly from: (member: string) => 'start' | 'finish';
  /** What the bar is longer than the finished member [mm]. */
  readonly spareLength: number;
  /** Whether a bend's radius is what the machine's own die leaves. */
  readonly ofDie: (piece: Piece) => boolean;
  /** Centreline radii that other dies for this tube leave [mm], each with the die's own. */
  readonly otherDies: readonly { readonly radius: number; readonly leaves: number }[];
};

/** A bend is looked at by itself in frames of up to so many of them; our own choice. */
const MOST_BENDS = 12;
/** A bend that grows by less grows by nothing [mm]; what a tape shows. */
const LEAST_STRETCH = 0.1;

/** The slips at the marks and at the machine that this frame can meet, the commonest first. */
export function atMarks(wanted: FrameGeometry, shop: ShopHabits): BendSlip[] {
  const slip = (key: SlipKey, order: number, excludes: readonly string[], bends: Bends): BendSlip => ({
    slip: { key, fields: [], dieRadius: null, bend: null },
    excludes,
    order,
    bends,
  });
  const lines = wanted.members.map(({ centreline }) => centreline).filter(({ pieces }) => pieces.some(isDieBend));
  // a slip that changes no member of this frame is none of its
  const some = (one: BendSlip): BendSlip[] => (lines.some((line) => one.bends(line, '') !== null) ? [one] : []);
  const kept =
    (bends: Bends): Bends =>
    (line, member) =>
      bends(line, member) ?? line;
  const ifAny = (one: BendSlip): BendSlip[] => some(one).map((found) => ({ ...found, bends: kept(found.bends) }));
  const dies = lines.flatMap(({ pieces }) => pieces.filter(isDieBend));
  const grows = dies.some((piece) => piece.kind === 'arc' && shop.stretch(piece.angle) >= LEAST_STRETCH);
  return [
    slip('apex-as-start', 3, ['marks'], (line) => wrongMarks(line, 'start', shop.spareLength)),
    slip('apex-as-middle', 3, ['marks'], (line) => wrongMarks(line, 'middle', shop.spareLength)),
    slip('start-as-end', 3, ['marks'], startsAsEnds),
    ...ifAny(slip('marks-from-other-end', 1, ['layout'], fromOtherEnd)),
    slip('cut-to-apexes', 2, ['cut'], cutToApexes),
    slip('springback-left-out', 7, ['angles'], (line) => withAngles(line, shop.released)),
    slip('springback-twice', 7, ['angles'], (line) => withAngles(line, shop.told)),
    ...(grows
      ? [
          slip('stretch-left-out', 4, ['stretch'], (line) => withStretch(line, shop.stretch)),
          slip('stretch-twice', 4, ['stretch'], (line) => withStretch(line, (angle) => -shop.stretch(angle))),
        ]
      : []),
    ...shop.otherDies.map(({ radius, leaves }): BendSlip => ({
      slip: { key: 'other-die', fields: [], dieRadius: radius, bend: null },
      excludes: ['die'],
      order: 5,
      bends: (line) => onOtherDie(line, leaves, shop.ofDie),
    })),
    ...some(slip('angle-as-supplement', 6, ['supplement'], toSupplements)),
    ...ifAny(slip('rotations-other-way', 8, ['rotations'], rotatedOtherWay)),
    ...(dies.length > MOST_BENDS ? [] : otherWay(wanted, shop)),
  ];
}

/** One bend made to the other side, for each bend of a member with more than one. */
const otherWay = (wanted: FrameGeometry, shop: ShopHabits): BendSlip[] =>
  wanted.members.flatMap(({ name, centreline }) => {
    const count = centreline.pieces.filter(isDieBend).length;
    if (count < 2) return [];
    return Array.from({ length: count }, (_, place): BendSlip => {
      const number = place + 1;
      return {
        slip: { key: 'bend-other-way', fields: [], dieRadius: null, bend: { member: name, number } },
        excludes: ['one-bend'],
        order: 9,
        bends: (line, member) => {
          if (member !== name) return line;
          return bentOtherWay(line, shop.from(name) === 'finish' ? count + 1 - number : number);
        },
      };
    });
  });
