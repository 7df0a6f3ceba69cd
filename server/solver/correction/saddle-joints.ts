import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { Effort } from './outcome.ts';

/** The welded ends of members that sit on others, and the closing welds of closed ones. */
export const saddleJoints = (frame: FrameGeometry): Effort['purgeJoints'] =>
  frame.members
    .flatMap((member) => [
      ...(member.start.kind === 'saddle' ? [{ member: member.name, station: 0 }] : []),
      ...(member.finish.kind === 'saddle' ? [{ member: member.name, station: member.centreline.length }] : []),
      ...(member.closed ? [{ member: member.name, station: 0 }] : []),
    ])
    .map((joint, index) => ({ number: index + 1, member: joint.member, station: joint.station }));
