import type { Frame, RunPoint } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';

/** A typed point in space, with the field that it is typed in. */
export type SpaceMark = {
  readonly number: number;
  readonly pointer: string;
  readonly at: Pick<RunPoint, 'x' | 'y' | 'z'>;
  readonly focused: boolean;
};

const MEMBER = /^\/frame\/members\/(\d+)(?:\/|$)/;

/** The list of points that is looked at: that of a run, or that of the member that is typed in. */
function listOf(frame: Frame, focused: string): { points: readonly RunPoint[]; pointer: string } | null {
  if (frame.shape === 'run') return { points: frame.points, pointer: '/frame/points' };
  const index = MEMBER.exec(focused)?.[1];
  const path = frame.shape === 'members' && index !== undefined ? frame.members[Number(index)]?.path : undefined;
  return path?.by === 'points' ? { points: path.points, pointer: `/frame/members/${index ?? ''}/path/points` } : null;
}

/** The points to mark, in the order of the table. */
export function spaceMarks({ frame }: Job, focused: string): readonly SpaceMark[] {
  const list = listOf(frame, focused);
  if (list === null) return [];
  return list.points.map((at, index) => {
    const pointer = `${list.pointer}/${String(index)}`;
    return { number: index + 1, pointer, at, focused: focused.startsWith(`${pointer}/`) };
  });
}

/** The name of the member whose field is typed in; null where the field is not of one member. */
export function focusedMember({ frame }: Job, focused: string): string | null {
  const index = MEMBER.exec(focused)?.[1];
  return frame.shape === 'members' && index !== undefined ? (frame.members[Number(index)]?.name ?? null) : null;
}

/** The field of a member that a finger on its tube opens; null where the frame is not typed member by member. */
export function fieldOfMember({ frame }: Job, name: string): string | null {
  if (frame.shape !== 'members') return null;
  const index = frame.members.findIndex((member) => member.name === name);
  return index < 0 ? null : `/frame/members/${String(index)}/name`;
}
