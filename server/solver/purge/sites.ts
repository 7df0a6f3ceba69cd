import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';

/** A joint to be welded, with its arc time [s]. */
export type PurgeJoint = {
  readonly number: number;
  readonly member: string;
  readonly station: number;
  readonly arcTime: number;
};

/** A spot of one bore that a weld heats. `cut`: the weld closes this bore, which is open there until then. */
export type Site = {
  readonly joint: number;
  readonly arcTime: number;
  readonly member: MemberGeometry;
  readonly station: number;
  readonly cut: boolean;
};

/** A station this near to an end is the end: finer than a tape reads [mm]. */
const NEAR = 0.1;

/** The saddle that a joint stands at, if it does. */
function saddleAt(member: MemberGeometry, station: number): Extract<EndGeometry, { kind: 'saddle' }> | undefined {
  if (member.start.kind === 'saddle' && station <= NEAR) return member.start;
  if (member.finish.kind === 'saddle' && station >= member.centreline.length - NEAR) return member.finish;
  return undefined;
}

/**
 * Where each weld heats a bore. A splice heats the bore that it closes. A saddle heats two bores that do not connect:
 * that of the member that ends there, and that of the uncut tube which it sits on, whose wall is heated right through
 * (API RP 582, 7.3, has attachments on walls under 6.5 mm purged; seen second-hand).
 */
export const sitesOf = (members: readonly MemberGeometry[], joints: readonly PurgeJoint[]): Site[] =>
  joints.flatMap(({ number, member: name, station, arcTime }) => {
    const member = members.find((one) => one.name === name);
    if (member === undefined) return [];
    const saddle = saddleAt(member, station);
    const own: Site = { joint: number, arcTime, member, station, cut: saddle === undefined };
    const partner = members.find((one) => one.name === saddle?.onto);
    if (saddle === undefined || partner === undefined) return [own];
    return [own, { joint: number, arcTime, member: partner, station: saddle.station, cut: false }];
  });

/** How many ends of a member are open to the air: 0 for a ring or a tube between two others. */
export const openEnds = ({ closed, start, finish }: MemberGeometry): number =>
  closed ? 0 : [start, finish].filter(({ kind }) => kind === 'free').length;

/** How many ends of a member sit on another one, so that a hole in that one's wall opens this bore into it. */
export const copedEnds = ({ start, finish }: MemberGeometry): number =>
  [start, finish].filter(({ kind }) => kind === 'saddle').length;
