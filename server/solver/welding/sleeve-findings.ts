import type { SettledJob } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Joint } from '../../plan/joint.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
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
  const purge = { field, value: 'purge' };
  const crevice = finding('sleeve-crevice', job.finish.nearSea ? 'caution' : 'note', field, {}, purge);
  const { outsideDiameter: outside } = size;
  if (outside <= 2 * job.welding.sleeve.wall) {
    const mended = '/welding/sleeve/wall';
    const data = { value: 2 * job.welding.sleeve.wall, high: Math.max(0, outside) };
    const wayOut = outside > 0 ? { field: mended, value: WALL_SHARE * outside } : purge;
    return [finding('sleeve-does-not-fit', 'stop', outside > 0 ? mended : field, data, wayOut), crevice];
  }
  return [...bentFindings(work), crevice];
}

/** The weld where the tube leaves a straight sleeve the most, where it leaves it by more than its play. */
function bentFindings({ job, size, butts, joints, frame }: SleeveWork): Finding[] {
  const bows = butts.flatMap((site): { site: WeldSite; bow: (length: number) => number }[] => {
    const member = frame.members.find(({ name }) => name === site.member);
    if (member === undefined) return [];
    const kink = (joints.find(({ number }) => number === site.joint)?.kink.value ?? 0) * RADIANS;
    return [{ site, bow: (length) => bowAt(member, site.station, length / 2) + (length / 4) * kink }];
  });
  const worst = bows.reduce<(typeof bows)[number] | null>(
    (most, one) => (most === null || one.bow(size.length) > most.bow(size.length) ? one : most),
    null,
  );
  if (worst === null || worst.bow(size.length) <= SLIDING) return [];
  const most = Math.min(...bows.map(({ bow }) => longest(bow, size.length)));
  const field = '/welding/sleeve/length';
  const data = { weld: worst.site.name, value: worst.bow(size.length), high: SLIDING };
  const wayOut =
    most >= LEAST_LENGTH * job.tube.outsideDiameter
      ? { field, value: most }
      : { field: '/welding/backing', value: 'purge' };
  return [finding('sleeve-does-not-fit', 'stop', field, data, wayOut)];
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

/** The longest sleeve, in tenths of a millimetre, that a tube lets in [mm]; halving, because a longer one bows more. */
function longest(bow: (length: number) => number, length: number): number {
  if (bow(length) <= SLIDING) return length;
  let [fits, too] = [0, length];
  // 40 halvings: to a part in 10¹²
  for (let step = 0; step < 40; step += 1) {
    const middle = (fits + too) / 2;
    if (bow(middle) <= SLIDING) fits = middle;
    else too = middle;
  }
  return Math.floor(10 * fits) / 10;
}
