import type { MemberGeometry } from '../frame/frame-geometry.ts';
import type { Bore } from './bores.ts';
import { tubeLength, type Tube } from './bore-graph.ts';

/** Rounding of stations [mm]. */
const ROUNDING = 1e-6;

/**
 * How much of a stretch lies inside the tubes that its member sits on, at its `from` and at its `to` [mm]. A saddle's
 * member runs to the axis of its partner; its bore begins where its own axis leaves that tube, √(R² − e²)/sin α from there.
 */
export function buriedEnds(
  tube: Tube,
  {
    bores,
    members,
    outsideDiameter,
  }: {
    readonly bores: readonly Bore[];
    readonly members: readonly MemberGeometry[];
    readonly outsideDiameter: number;
  },
): { from: number; to: number } {
  const member = members[bores[tube.bore]?.member ?? -1];
  if (member === undefined || member.closed) return { from: 0, to: 0 };
  const { centreline } = member;
  const within = (end: 'start' | 'finish'): number => {
    const seat = member[end];
    if (seat.kind !== 'saddle') return 0;
    const half = Math.sqrt(Math.max(0, (outsideDiameter / 2) ** 2 - seat.offset ** 2));
    const sine = Math.sin(seat.axisAngle);
    return sine > 0 ? half / sine : half;
  };
  const length = tubeLength(tube);
  // a node may stand within the partner itself
  const from = Math.min(length, Math.max(0, within('start') - tube.from));
  const to = Math.min(length - from, Math.max(0, tube.to - (centreline.length - within('finish'))));
  return { from: from > ROUNDING ? from : 0, to: to > ROUNDING ? to : 0 };
}
