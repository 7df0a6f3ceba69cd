import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { fedEnd, type GasEnds } from './gas-ends.ts';
import type { Site } from './sites.ts';

/** The part of one bore that is filled in one set-up; stations on its member [mm]. */
export type Pocket = {
  readonly member: MemberGeometry;
  readonly sites: readonly Site[];
  readonly stretches: readonly { readonly from: number; readonly to: number }[];
  readonly length: number;
  readonly feed: number;
  readonly vent: number;
  readonly dams: readonly number[];
  /** Ways that the gas takes side by side: two round a ring, else one. */
  readonly ways: 1 | 2;
};

const wrapped = (station: number, length: number): number => ((station % length) + length) % length;

/** A whole ring: fed at the weld, vented opposite, so that gas runs both ways round. */
function ringPocket(member: MemberGeometry, sites: readonly Site[]): Pocket {
  const { length } = member.centreline;
  const feed = wrapped(sites[0]?.station ?? 0, length);
  return {
    member,
    sites,
    stretches: [{ from: 0, to: length }],
    length,
    feed,
    vent: wrapped(feed + length / 2, length),
    dams: [],
    ways: 2,
  };
}

/** The whole bore of each member that a weld heats, in the order of the members. */
export function wholeBores(members: readonly MemberGeometry[], sites: readonly Site[], ends: GasEnds): Pocket[] {
  return members.flatMap((member) => {
    const own = sites.filter((site) => site.member === member);
    if (own.length === 0) return [];
    if (member.closed) return [ringPocket(member, own)];
    const { length } = member.centreline;
    const fromStart = fedEnd(member, ends) === 'start';
    const [feed, vent] = fromStart ? [0, length] : [length, 0];
    return [{ member, sites: own, stretches: [{ from: 0, to: length }], length, feed, vent, dams: [], ways: 1 }];
  });
}

/** What bounds a short pocket on one side. */
type Bound = { readonly station: number; readonly by: 'dam' | 'free' | 'closed' };

function boundAt(wanted: number, end: EndGeometry, beyond: boolean, limit: number): Bound {
  if (!beyond) return { station: wanted, by: 'dam' };
  return { station: limit, by: end.kind === 'free' ? 'free' : 'closed' };
}

/** A pocket between dams at a distance [mm] either side of a weld, shorter where the member ends before that. */
export function dammedPocket(site: Site, distance: number, ends: GasEnds): { pocket: Pocket; findings: Finding[] } {
  const { member, station } = site;
  const { length } = member.centreline;
  const beyondEnd = (room: number) =>
    finding('dam-beyond-end', 'note', '/purge/damDistance', {
      joint: site.joint,
      member: member.name,
      value: distance,
      high: room,
    });
  if (member.closed) {
    if (2 * distance >= length) return { pocket: ringPocket(member, [site]), findings: [beyondEnd(length / 2)] };
    const from = wrapped(station - distance, length);
    const to = wrapped(station + distance, length);
    const stretches =
      from < to
        ? [{ from, to }]
        : [
            { from, to: length },
            { from: 0, to },
          ];
    return {
      pocket: {
        member,
        sites: [site],
        stretches,
        length: 2 * distance,
        feed: from,
        vent: to,
        dams: [from, to],
        ways: 1,
      },
      findings: [],
    };
  }
  const low = boundAt(station - distance, member.start, station - distance <= 0, 0);
  const high = boundAt(station + distance, member.finish, station + distance >= length, length);
  // where one side is closed the hose is pushed through to it, so that gas comes back past the weld
  const turned = low.by === 'closed' || high.by === 'closed' ? low.by !== 'closed' : fedEnd(member, ends) === 'finish';
  const [feed, vent] = turned ? [high.station, low.station] : [low.station, high.station];
  return {
    pocket: {
      member,
      sites: [site],
      stretches: [{ from: low.station, to: high.station }],
      length: high.station - low.station,
      feed,
      vent,
      dams: [low, high].filter(({ by }) => by === 'dam').map((bound) => bound.station),
      ways: 1,
    },
    findings: [
      ...(low.by === 'free' && station < distance ? [beyondEnd(station)] : []),
      ...(high.by === 'free' && length - station < distance ? [beyondEnd(length - station)] : []),
    ],
  };
}
