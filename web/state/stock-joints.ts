import type { PlacedJoint } from '../../server/job/closing.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { OverlongPiece } from '../../server/plan/stock.ts';

/** As many joints between bars as the job takes. */
export const MOST_BAR_JOINTS = 60;

/**
 * A joint between bars to begin with: where the plan offers one, else where it says that one may stand, else at the start of
 * the first member, so that its place is typed; null where there is no frame.
 */
export function freshBarJoint(frame: Plan['frame'], overlong: readonly OverlongPiece[]): PlacedJoint | null {
  for (const { member, offered, joints } of overlong) {
    const station = offered ?? joints[0]?.from;
    if (member !== '' && station !== undefined) return { member, station };
  }
  const [first] = frame?.members ?? [];
  return first === undefined ? null : { member: first.name, station: 0 };
}
