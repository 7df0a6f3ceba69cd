import type { Point } from '../plan/figure.ts';
import type { MemberPlan, PlanPiece } from '../plan/frame.ts';
import { chosenMembers, type ExportInput, type Refused } from './export-file.ts';
import { direction, dot, minus, plus, realPieces, size, times } from './in-space.ts';

/** An end of a solid: as sawn, or cut by a straight length of the partner's outside; a saddle may be left square. */
export type SolidEnd =
  | { readonly kind: 'square' }
  | { readonly kind: 'left-square' }
  | {
      readonly kind: 'saddle';
      /** The ends of the partner's axis where it cuts. */
      readonly from: Point;
      readonly to: Point;
      /** How far the tube is first made longer, so that the cut goes right through it [mm]. */
      readonly beyond: number;
      /** The most that the cut can take off the axis [mm]. */
      readonly most: number;
    };

export type SolidMember = {
  readonly name: string;
  readonly pieces: readonly PlanPiece[];
  readonly start: SolidEnd;
  readonly finish: SolidEnd;
};

/** Everything that the kernel needs, as plain data that can be sent to a worker. */
export type SolidJob = {
  readonly title: string;
  readonly outsideDiameter: number;
  readonly wall: number;
  readonly members: readonly SolidMember[];
};

/** Axes that pass nearer than this count as meeting [mm]; half of what the cut stands clear in `step-kernel.ts`. */
const MEETING = 0.005;
/** Below this angle a saddle is left square: it is longer than the tube is thick many times over [degrees]. Our choice. */
const LEAST_ANGLE = 20;
/** Room past the last point of a cut [mm]. */
const ROOM = 1;

/** The members as bodies to make, each end with what cuts it. */
export function solidJob(input: ExportInput): { readonly ok: true; readonly job: SolidJob } | Refused {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const { job, plan } = input;
  const radius = job.tube.outsideDiameter / 2;
  const all = plan.frame?.members ?? [];
  const members = chosen.members.map((member): SolidMember => {
    const pieces = realPieces(member.pieces);
    return {
      name: member.name,
      pieces,
      start: solidEnd(member.start, pieces[0], all, radius),
      finish: solidEnd(member.finish, pieces.at(-1), all, radius),
    };
  });
  const { outsideDiameter, wall } = job.tube;
  return { ok: true, job: { title: job.title, outsideDiameter, wall, members } };
}

/**
 * What cuts an end. A saddle is cut where its partner is straight over the whole cut, the axes meet and the end's own
 * piece is straight; all tubes of a frame have one diameter. Elsewhere it is left square.
 */
function solidEnd(
  end: MemberPlan['start'],
  own: PlanPiece | undefined,
  members: readonly MemberPlan[],
  radius: number,
): SolidEnd {
  if (end.kind !== 'saddle') return { kind: 'square' };
  const { angle, offset, point } = end;
  const partner = members.find(({ name }) => name === end.onto);
  const meets = offset !== null && Math.abs(offset) <= MEETING && angle !== null && angle >= LEAST_ANGLE;
  if (!meets || partner === undefined || own?.kind !== 'straight') return { kind: 'left-square' };
  const between = (angle * Math.PI) / 180;
  // along the partner: R / tan β to where the axes' plane leaves its outside, r / sin β either side of it. Derived.
  const half = radius / Math.sin(between) + radius / Math.tan(between);
  const most = half;
  for (const piece of realPieces(partner.pieces)) {
    if (piece.kind !== 'straight') continue;
    const along = direction(minus(piece.to, piece.from));
    const station = dot(minus(point, piece.from), along);
    const foot = plus(piece.from, times(along, station));
    if (size(minus(point, foot)) > MEETING || station < half || station > piece.length - half) continue;
    const reach = times(along, half + ROOM);
    const beyond = radius / Math.tan(between) + ROOM;
    return { kind: 'saddle', from: minus(foot, reach), to: plus(foot, reach), beyond, most };
  }
  return { kind: 'left-square' };
}
