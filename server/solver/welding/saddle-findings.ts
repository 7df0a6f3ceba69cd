import type { Job } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import { seatOf, type WeldWork } from './weld-work.ts';

/** Flatter than this torch and wire do not get into the heel of a saddle [degrees]: common practice, no source. */
const LEAST_ANGLE = 30;
/** A right angle of 30° may be found as a hair less [degrees]. */
const HAIR = 1e-6;

/** Saddles that lie so flat on their tube that their heel is out of reach. */
export function saddleFindings(
  welds: readonly Pick<WeldWork, 'site'>[],
  { frame, typed }: { readonly frame: FrameGeometry; readonly typed: Job['frame'] },
): Finding[] {
  return welds.flatMap(({ site }) => {
    if (site.form !== 'saddle') return [];
    const value = seatOf(site, frame.members).axisAngle * DEGREES;
    if (value >= LEAST_ANGLE - HAIR) return [];
    const index = typed.shape === 'members' ? typed.members.findIndex(({ name }) => name === site.member) : -1;
    const field = index < 0 || site.end === null ? '/frame' : `/frame/members/${String(index)}/${site.end}`;
    const { name: weld, member, onto } = site;
    return [finding('saddle-acute', 'caution', field, { weld, member, onto, value, low: LEAST_ANGLE })];
  });
}
