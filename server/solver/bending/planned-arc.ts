import type { Tube } from '../../job/tube.ts';
import type { Band } from '../../plan/figure.ts';
import { band } from '../figure.ts';
import { FAR_CORNER } from '../geometry/bend-table.ts';
import type { ResolvedGrade } from '../tube/grades.ts';
import type { Arc } from './arcs.ts';
import type { SetUp } from './set-up.ts';
import type { SpringbackLaw } from './springback-law.ts';

/** A typed radius this near to the die's own is the die's own [–]: 0.5 %, under what a radius gauge shows. */
const SAME_RADIUS = 0.005;

/** Whether an arc is bent on the machine's own die: its radius is what that die leaves. */
export const isOfDie = (
  arc: { readonly made: 'die' | 'rolled'; readonly radius: number },
  law: Pick<SpringbackLaw, 'radiusAfterRelease'>,
): boolean => arc.made === 'die' && Math.abs(arc.radius / law.radiusAfterRelease - 1) <= SAME_RADIUS;

/** How far the tube's size may stand off, ± [mm]; null where its tolerance is not known. */
export type TubeDoubt = { readonly outsideDiameter: number; readonly wall: number } | null;

/** What bends are planned with. */
export type BendContext = {
  readonly tolerance: TubeDoubt;
  readonly tube: Tube;
  readonly grade: ResolvedGrade;
  readonly machine: SetUp;
  readonly law: SpringbackLaw;
};

/** An arc with its die, the angle to bend to [mm, rad], and where its start is marked on the straight tube [mm]. */
export type PlannedArc = Arc & {
  readonly number: number;
  readonly dieRadius: number;
  readonly command: number;
  /** Whether the radius is what the machine's own die gives. */
  readonly ofDie: boolean;
  readonly mark: number;
  /** What the arc takes of the straight tube: its length less the stretch. */
  readonly taken: number;
  readonly stretch: number;
  /** Change of the start mark for 1 mm more radius after release, the corners staying where they are [–]. */
  readonly markSlope: number;
};

/** tan(θ/2), or 0 where the two straights meet at no point near by: from 170° on the corner is not what is held. */
export const setbackFactor = (arc: Arc): number =>
  arc.piece.made === 'die' && arc.piece.angle < FAR_CORNER ? Math.tan(arc.piece.angle / 2) : 0;

/**
 * Dies, commands and marks of a member's arcs, in order.
 *
 * @param first where station 0 lies on the sawn tube [mm]: extra for the clamp counts up, a saddle's throat down
 */
export function planArcs(arcs: readonly Arc[], context: BendContext, first: number): PlannedArc[] {
  const { law, machine } = context;
  let stretched = 0;
  let slope = 0;
  return arcs.map((arc, index) => {
    const { radius, angle, made } = arc.piece;
    const ofDie = isOfDie(arc.piece, law);
    const dieRadius = ofDie ? machine.dieRadius : law.dieFor(radius);
    const command = made === 'die' ? law.commandFor(angle, dieRadius) : angle;
    const stretch = made === 'die' ? law.stretchFor(command) : 0;
    const planned: PlannedArc = {
      ...arc,
      number: index + 1,
      dieRadius,
      command,
      ofDie,
      mark: first + arc.station - stretched,
      taken: arc.piece.length - stretch,
      stretch,
      markSlope: slope - setbackFactor(arc),
    };
    stretched += stretch;
    slope += ofDie ? angle - 2 * setbackFactor(arc) : 0;
    return planned;
  });
}

/** ± of a length that moves with the radius after release; nothing where the radius was typed. */
export const radiusBand = (slope: number, context: Pick<BendContext, 'law'>): Band | null =>
  slope === 0 || context.law.radiusPlusMinus === 0
    ? null
    : band(
        Math.abs(slope) * context.law.radiusPlusMinus,
        context.law.radiusMeasured ? 'test-bends' : 'springback-model',
      );

/** A band with the accuracy of a tape on the tube added. */
export function withTape(other: Band | null, { machine }: Pick<BendContext, 'machine'>): Band | null {
  if (machine.markAccuracy === 0) return other;
  if (other === null) return band(machine.markAccuracy, 'tape');
  return band(Math.hypot(other.plusMinus, machine.markAccuracy), ...other.from, 'tape');
}

/** Change of the developed length for 1 mm more radius after release, the corners staying where they are [–]: θ − 2 tan(θ/2). */
export const lengthSlope = (arcs: readonly PlannedArc[]): number =>
  arcs.reduce((sum, arc) => sum + (arc.ofDie ? arc.piece.angle - 2 * setbackFactor(arc) : 0), 0);
