import type { SettledJob } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Joint } from '../../plan/joint.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { opensUnder } from '../frame/opens-under.ts';
import { RADIANS } from '../geometry/angle.ts';
import { SLIDING, type SleeveSize } from './sleeve.ts';
import type { WeldSite } from './weld-sites.ts';

/** A sleeve shorter than this guides nothing [diameters]; our own choice. */
const LEAST_LENGTH = 1;
/** A sleeve's wall that is offered where the typed one leaves no bore, as a share of its diameter; our own choice. */
const WALL_SHARE = 0.1;

/** What a sleeve is judged on. */
export type SleeveWork = {
  readonly job: SettledJob;
  readonly size: SleeveSize;
  readonly butts: readonly WeldSite[];
  readonly joints: readonly Joint[];
  readonly frame: FrameGeometry;
};

/** Whether the sleeve goes into the tube where it is welded, and what stays behind it. */
export function sleeveFindings(work: SleeveWork): Finding[] {
  const { job, size } = work;
  const field = '/welding/backing';
  const { outsideDiameter: outside } = size;
  const { wall } = job.welding.sleeve;
  const bore = outside - 2 * wall;
  const purge = { field, value: 'purge' };
  const left = bore > 0 ? { bore } : {};
  const crevice = finding('sleeve-crevice', job.finish.nearSea ? 'caution' : 'note', field, left, purge);
  if (outside <= 0) return [finding('sleeve-does-not-fit', 'stop', field, {}, purge), crevice];
  if (bore <= 0) {
    const mended = '/welding/sleeve/wall';
    const wayOut = { field: mended, value: WALL_SHARE * outside };
    return [
      finding('sleeve-does-not-fit', 'stop', mended, { value: wall, high: outside / 2, outside }, wayOut),
      crevice,
    ];
  }
  return [...lengthFindings(work), crevice];
}

/** The longest sleeve that goes in at a weld [mm], and what is in the way of a longer one. */
type Room = { readonly most: number; readonly data: Readonly<Record<string, number | string>> };

/** The weld that has the least room for its sleeve, where that is less than it needs. */
function lengthFindings(work: SleeveWork): Finding[] {
  const { job, size, butts } = work;
  const rooms = butts.flatMap((site) =>
    [...bendRooms(site, work), ...sleeveRooms(site, work), ...endRooms(site, work), ...holeRooms(site, work)].map(
      ({ most, data }) => ({ most, data: { weld: site.name, ...data } }),
    ),
  );
  const least = rooms.reduce<Room | null>(
    (worst, one) => (worst === null || one.most < worst.most ? one : worst),
    null,
  );
  if (least === null || least.most >= size.length) return [];
  const field = '/welding/sleeve/length';
  // a tenth of a millimetre is as near as a sleeve is cut
  const high = Math.floor(10 * Math.max(0, least.most)) / 10;
  const wayOut =
    high >= LEAST_LENGTH * job.tube.outsideDiameter
      ? { field, value: high }
      : { field: '/welding/backing', value: 'purge' };
  return [finding('sleeve-does-not-fit', 'stop', field, { ...least.data, value: size.length, high }, wayOut)];
}

const memberOf = (site: WeldSite, { frame }: SleeveWork): MemberGeometry | undefined =>
  frame.members.find(({ name }) => name === site.member);

/** The tube leaves a straight sleeve by more than its play, in a bend or by the kink of the joint. */
function bendRooms(site: WeldSite, work: SleeveWork): Room[] {
  const member = memberOf(site, work);
  if (member === undefined) return [];
  const kink = (work.joints.find(({ number }) => number === site.joint)?.kink.value ?? 0) * RADIANS;
  const bow = (length: number): number => bowAt(member, site.station, length / 2) + (length / 4) * kink;
  const { length } = work.size;
  const value = bow(length);
  return value <= SLIDING ? [] : [{ most: longest(bow, length), data: { bow: value, play: SLIDING } }];
}

/** Half of each of two sleeves lies between their welds. */
function sleeveRooms(site: WeldSite, work: SleeveWork): Room[] {
  const member = memberOf(site, work);
  return work.butts.flatMap((other): Room[] => {
    if (member === undefined || other.member !== site.member || other.name === site.name) return [];
    return [{ most: apart(site, other, member, work.joints), data: { other: other.name } }];
  });
}

/** Tube between two welds of a member [mm]: the piece that is let in between them, else along the frame. */
function apart(
  site: WeldSite,
  other: WeldSite,
  { centreline, closed }: MemberGeometry,
  joints: readonly Joint[],
): number {
  const along = Math.abs(site.station - other.station);
  const piece = site.joint === other.joint ? joints.find(({ number }) => number === site.joint)?.letIn : undefined;
  if (piece !== undefined && piece !== null) return piece.length.value;
  return closed ? Math.min(along, centreline.length - along) : along;
}

/** A sleeve that sticks out of its tube. */
function endRooms(site: WeldSite, work: SleeveWork): Room[] {
  const member = memberOf(site, work);
  if (member === undefined || member.closed) return [];
  const { length } = member.centreline;
  return [{ most: 2 * Math.min(site.station, length - site.station), data: { tube: member.name } }];
}

/** A sleeve over the hole that opens the tube's bore into that of a branch. */
function holeRooms(site: WeldSite, { job, frame }: SleeveWork): Room[] {
  const { holes } = job.purge;
  return frame.members.flatMap((branch) =>
    (['start', 'finish'] as const).flatMap((end): Room[] => {
      const seat = branch[end];
      if (seat.kind !== 'saddle' || seat.onto !== site.member || !opensUnder(holes, branch.name, end)) return [];
      const most = 2 * Math.abs(site.station - seat.station) - holes.bore;
      return [{ most, data: { branch: branch.name } }];
    }),
  );
}

/**
 * How far the centreline leaves its tangent within a distance either way of a station [mm]: x²/2R for what lies on an
 * arc, on the side where that is more.
 */
function bowAt({ centreline, closed }: MemberGeometry, station: number, half: number): number {
  // a closed tube goes on past its closing weld
  const laps = closed ? [-centreline.length, 0, centreline.length] : [0];
  let from = 0;
  let before = 0;
  let after = 0;
  for (const piece of centreline.pieces) {
    const to = from + piece.length;
    if (piece.kind === 'arc') {
      for (const lap of laps) {
        const back = Math.min(station, to + lap) - Math.max(station - half, from + lap);
        const ahead = Math.min(station + half, to + lap) - Math.max(station, from + lap);
        before += Math.max(0, back) ** 2 / (2 * piece.radius);
        after += Math.max(0, ahead) ** 2 / (2 * piece.radius);
      }
    }
    from = to;
  }
  return Math.max(before, after);
}

/** The longest sleeve that a tube lets in [mm]; halving, because a longer one bows more. */
function longest(bow: (length: number) => number, length: number): number {
  if (bow(length) <= SLIDING) return length;
  let [fits, too] = [0, length];
  // 40 halvings: to a part in 10¹²
  for (let step = 0; step < 40; step += 1) {
    const middle = (fits + too) / 2;
    if (bow(middle) <= SLIDING) fits = middle;
    else too = middle;
  }
  return fits;
}
