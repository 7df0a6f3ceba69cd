import type { Job } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { tubePlaceEnd } from '../frame/tube-place-end.ts';

type End = 'start' | 'finish';

/** A pad with a plate, and the open end that it is welded to; null where it stands at none. */
type Pad = {
  readonly index: number;
  readonly name: string;
  readonly hole: number;
  readonly on: string;
  readonly member: MemberGeometry | null;
  readonly end: End | null;
};

/** Plates that stand at no open end, and plates that close a bore which has no other way out. */
export function padFindings({ fixing, purge }: Pick<Job, 'fixing' | 'purge'>, frame: FrameGeometry): Finding[] {
  const pads = fixing.flatMap((point, index): Pad[] => {
    if (point.fixing !== 'pad' || point.plate === null) return [];
    const member = frame.members.find(({ name }) => name === point.at.member) ?? null;
    const end = member === null ? undefined : tubePlaceEnd(point.at, member);
    const open = member !== null && end !== undefined && member[end].kind === 'free' ? end : null;
    return [{ index, name: point.name, hole: point.plate.hole, on: point.at.member, member, end: open }];
  });
  return pads.flatMap((pad): Finding[] => {
    const root = `/fixing/${String(pad.index)}`;
    const data = { name: pad.name, member: pad.on };
    if (pad.member === null || pad.end === null)
      return [finding('pad-not-an-end', 'caution', `${root}/at/spot`, data, { field: `${root}/plate`, value: null })];
    const other = pad.end === 'start' ? 'finish' : 'start';
    if (pad.hole > 0 || isOpen(pad.member, other, pads, purge)) return [];
    const field = `${root}/plate/hole`;
    return [finding('pad-closes-bore', 'caution', field, data, { field, value: purge.holes.bore })];
  });
}

/** Whether gas and air get out of a member beside one of its ends: at its other end, or through a hole. */
function isOpen(member: MemberGeometry, end: End, pads: readonly Pad[], { holes }: Job['purge']): boolean {
  if (holes.toAir.some(({ at }) => at.member === member.name)) return true;
  const kind = member[end].kind;
  if (kind === 'free') {
    const pad = pads.find((one) => one.on === member.name && one.end === end);
    return pad === undefined || pad.hole > 0;
  }
  const excepted = holes.except.some((one) => one.member === member.name && one.end === end);
  return kind === 'saddle' && (holes.underSaddles === 'all') !== excepted;
}
