import type { Job } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { tubePlaceEnd } from '../frame/tube-place-end.ts';

/**
 * Plates that stand at no open end. One that closes the last way out of a bore is told with the chamber that it closes:
 * whether it does hangs on all holes of the frame.
 */
export function padFindings({ fixing }: Pick<Job, 'fixing'>, frame: FrameGeometry): Finding[] {
  return fixing.flatMap((point, index): Finding[] => {
    if (point.fixing !== 'pad' || point.plate === null) return [];
    const member = frame.members.find(({ name }) => name === point.at.member);
    const end = member === undefined ? undefined : tubePlaceEnd(point.at, member);
    if (member !== undefined && end !== undefined && member[end].kind === 'free') return [];
    const root = `/fixing/${String(index)}`;
    const data = { name: point.name, member: point.at.member };
    return [finding('pad-not-an-end', 'caution', `${root}/at/spot`, data, { field: `${root}/plate`, value: null })];
  });
}
