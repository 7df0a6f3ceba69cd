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

/** All welds of a new frame: its saddles, and the closing welds of closed members. */
export const newFrameWelds = ({ members }: FrameGeometry): WeldPlace[] => [
  ...saddleWelds(members),
  ...members.flatMap(({ name, closed }): WeldPlace[] =>
    closed ? [{ kind: 'closing', joint: 0, side: '', member: name, station: 0 }] : [],
  ),
];
