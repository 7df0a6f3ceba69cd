import type { MemberPlan, PlanPiece } from '../../server/plan/frame.ts';
import type { Plan } from '../../server/plan/plan.ts';

/** A piece of a tube as readings name it: straights, die bends and rolled arcs are each counted by themselves. */
export type TubePiece = {
  readonly kind: 'straight' | 'die' | 'rolled';
  /** Which one of its kind, from the start, from 1. */
  readonly number: number;
  /** As wanted [mm]. */
  readonly length: number;
  /** As wanted [mm, degrees]; 0 for a straight. */
  readonly radius: number;
  readonly angle: number;
};

/** A member of the wanted frame, with what can be measured on it. Pieces and bends are counted from its start. */
export type Tube = {
  readonly name: string;
  readonly closed: boolean;
  readonly pieces: readonly TubePiece[];
  /** Number of die bends. */
  readonly bends: number;
};

function tubeOf({ name, closed, pieces }: MemberPlan): Tube {
  const counts = { straight: 0, die: 0, rolled: 0 };
  const named = pieces.map((piece: PlanPiece): TubePiece => {
    const kind = piece.kind === 'straight' ? 'straight' : piece.made;
    counts[kind] += 1;
    const { radius, angle } = piece.kind === 'arc' ? piece : { radius: 0, angle: 0 };
    return { kind, number: counts[kind], length: piece.length, radius, angle };
  });
  return { name, closed, pieces: named, bends: counts.die };
}

/** The members of the wanted frame; none while there is no frame. */
export const tubesOf = (plan: Plan | null): readonly Tube[] => plan?.frame?.members.map(tubeOf) ?? [];
