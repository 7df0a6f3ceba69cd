import { barJointWelds, type BarJoints } from '../stock/bar-joints.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import type { WeldPlace } from '../welding/weld-sites.ts';

/** The welded ends of members that sit on others. */
export const saddleWelds = (members: readonly MemberGeometry[]): WeldPlace[] =>
  members.flatMap((member) =>
    (['start', 'finish'] as const).flatMap((end): WeldPlace[] =>
      member[end].kind === 'saddle'
        ? [
            {
              kind: 'saddle',
              joint: 0,
              side: '',
              member: member.name,
              station: end === 'start' ? 0 : member.centreline.length,
            },
          ]
        : [],
    ),
  );

/** All welds of a new frame: its saddles, the closing welds of closed members, and the joints between bars. */
export const newFrameWelds = ({ members }: FrameGeometry, joints: BarJoints = new Map()): WeldPlace[] => [
  ...saddleWelds(members),
  ...members.flatMap(({ name, closed }): WeldPlace[] =>
    closed ? [{ kind: 'closing', joint: 0, side: '', member: name, station: 0 }] : [],
  ),
  ...barJointWelds(joints),
];
