import type { PlacedJoint } from '../../job/closing.ts';
import type { SettledJob } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import type { CutPiece, OverlongPiece } from '../../plan/stock.ts';
import { clearOfWeld } from '../correction/splice/free-stretches.ts';
import { figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import { barJoints, MOST_STATION } from './bar-joints.ts';
import { longestOf, ROUNDING } from './bar-use.ts';
import { without, type JointRoom, type StraightTube, type StraightTubes } from './straight-tube.ts';

/** A piece that does not fit on a bar of so many mm. */
export type TooLong = { readonly piece: CutPiece; readonly bar: number };

/** Joints between bars that a job can have at the most. */
const MOST_JOINTS = 60;
/** A member of the frame as wanted is as long as planned, one cut anew for a frame that came back is not [mm]; rounding. */
const SAME_LENGTH = 1e-3;

/**
 * Pieces that are longer than any bar, and where a joint would help: in a straight of the new frame, nearest to the middle of
 * the piece, so that what is left of both bars is as long as it can be. Where one joint is not enough, the first of several
 * is offered: it leaves one length that fits, and as little as can be to be joined again. A leg and a let-in piece are not joined: a leg
 * carries load, and a let-in piece is short.
 */
export function overlongPieces(
  found: readonly TooLong[],
  tubes: StraightTubes,
  job: Pick<SettledJob, 'stock' | 'closing' | 'tube'>,
): { overlong: OverlongPiece[]; findings: Finding[] } {
  const { saw } = job.stock;
  const findings: Finding[] = [];
  const overlong = found.map(({ piece, bar }): OverlongPiece => {
    const longest = longestOf(bar, saw);
    const { rooms, offered, enough } = joined(piece, longest, tubes, job);
    const data = { name: piece.name, length: piece.length.value, longest };
    const asked: PlacedJoint[] = [...job.stock.joints, ...(offered === null ? [] : [offered])];
    const wayOut = offered === null || asked.length > MOST_JOINTS ? null : { field: '/stock/joints', value: asked };
    findings.push(finding('piece-too-long', 'caution', piece.field, data, wayOut));
    return {
      name: piece.name,
      member: piece.kind === 'member' || piece.kind === 'length' ? piece.of : '',
      length: piece.length,
      longest: figure(
        longest,
        'mm',
        'b = B − t',
        [input('B', 'bar', bar, 'mm'), input('t', 'end-cut-off', saw.endTrim, 'mm')],
        ['bar-bookkeeping'],
      ),
      joints: rooms.map(({ from, to }) => ({ from, to })),
      offered: offered?.station ?? null,
      enough,
    };
  });
  return { overlong, findings };
}

type Joined = {
  readonly rooms: readonly JointRoom[];
  readonly offered: PlacedJoint | null;
  readonly enough: boolean;
};

/** Where a piece may have a joint, and the one that is offered. */
function joined(
  piece: CutPiece,
  longest: number,
  tubes: StraightTubes,
  job: Parameters<typeof overlongPieces>[2],
): Joined {
  const nowhere: Joined = { rooms: [], offered: null, enough: false };
  const tube = tubes.get(piece.of);
  if (tube === undefined || (piece.kind !== 'member' && piece.kind !== 'length')) return nowhere;
  if (piece.kind === 'member' && Math.abs(piece.length.value - tube.cutLength) > SAME_LENGTH) return nowhere;
  const { outsideDiameter } = job.tube;
  const own = barJoints(job.stock.joints, tubes, outsideDiameter).joints.get(piece.of) ?? [];
  const places = [0, ...own.map(tube.placeOf), tube.cutLength];
  const [low, high] = [places[piece.part - 1] ?? 0, places[piece.part] ?? tube.cutLength];
  const clear = clearOfWeld(outsideDiameter);
  const typed = tube.rooms.flatMap((room) =>
    room.from > MOST_STATION ? [] : [{ ...room, to: Math.min(room.to, MOST_STATION) }],
  );
  const rooms = own
    .reduce<JointRoom[]>((left, at) => without(left, at - clear, at + clear, 'weld'), typed)
    .filter(({ from, to }) => {
      const middle = tube.placeOf((from + to) / 2);
      return low < middle && middle < high;
    });
  // each new face is left longer by what the weld pulls in, and shorter by its half of the gap
  const face = (job.closing.shrinkage - job.closing.gap) / 2;
  const facesBefore = piece.part > 1 ? 2 : 1;
  const facesAfter = piece.part < piece.parts ? 2 : 1;
  const most = low + longest - facesBefore * face;
  const least = high - longest + facesAfter * face;
  const both = nearestStation(tube, rooms, { least, most, middle: (low + high) / 2 });
  const station = both ?? firstOfSeveral(tube, rooms, { low, high, least, most });
  return { rooms, offered: station === null ? null : { member: piece.of, station }, enough: both !== null };
}

/**
 * A joint that leaves a length which fits, from one end of the piece or the other, and the least to be joined again; null
 * where no room is within a bar of an end.
 */
function firstOfSeveral(
  tube: StraightTube,
  rooms: readonly JointRoom[],
  {
    low,
    high,
    least,
    most,
  }: { readonly low: number; readonly high: number; readonly least: number; readonly most: number },
): number | null {
  const first = nearestStation(tube, rooms, { least: low, most, middle: most });
  const last = nearestStation(tube, rooms, { least, most: high, middle: least });
  if (first === null || last === null) return first ?? last;
  return high - tube.placeOf(first) <= tube.placeOf(last) - low ? first : last;
}

/** The station whose place on the straight tube is within limits and nearest to the middle; null where none is. */
function nearestStation(
  tube: StraightTube,
  rooms: readonly JointRoom[],
  { least, most, middle }: { readonly least: number; readonly most: number; readonly middle: number },
): number | null {
  let best: { station: number; off: number } | null = null;
  for (const { from, to } of rooms) {
    const [begin, end] = [tube.placeOf(from), tube.placeOf(to)];
    const low = Math.max(least, Math.min(begin, end));
    const high = Math.min(most, Math.max(begin, end));
    if (low > high + ROUNDING) continue;
    const place = Math.min(high, Math.max(low, middle));
    // a room lies on one straight: stations run as places do, or against them
    const along = (at: number): number => (end >= begin ? from + at - begin : from + begin - at);
    const [one, other] = [along(low), along(high)];
    const station = easy(along(place), Math.min(one, other), Math.max(one, other));
    const off = Math.abs(place - middle);
    if (off < (best?.off ?? Infinity)) best = { station, off };
  }
  return best?.station ?? null;
}

/** A station in whole mm where that is still within its limits. */
function easy(station: number, low: number, high: number): number {
  const whole = Math.round(station);
  return whole >= low && whole <= high ? whole : Math.min(high, Math.max(low, station));
}
