import type { FixingPoint } from '../../server/job/fixing.ts';
import type { EndGeometry, FrameGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { mirrorFrame } from '../../server/solver/frame/mirror-frame.ts';
import type { Centreline, Piece } from '../../server/solver/geometry/centreline.ts';
import { reverseCentreline } from '../../server/solver/geometry/reverse-centreline.ts';
import { scale } from '../../server/solver/geometry/vector.ts';
import { workload, type PurgeWorkload } from './purge-workload.ts';

type End = 'start' | 'finish';
const other = (end: End): End => (end === 'start' ? 'finish' : 'start');

/** The same frame in the mirror z = 0, held in the mirror. */
export function mirrored({ job, frame, welds }: PurgeWorkload): PurgeWorkload {
  const { up } = job.purge;
  return workload({ ...job, purge: { ...job.purge, up: { ...up, z: -up.z } } }, mirrorFrame(frame), welds);
}

/** The same frame with every member counted from its other end; holes, pads and cuts stay where they are. */
export function reversed({ job, frame, welds }: PurgeWorkload): PurgeWorkload {
  const lengths = new Map(frame.members.map(({ name, centreline }) => [name, centreline.length]));
  const from = (member: string, station: number): number => (lengths.get(member) ?? 0) - station;
  const seat = (end: EndGeometry): EndGeometry =>
    end.kind === 'saddle' ? { ...end, station: from(end.onto, end.station) } : end;
  const turned: FrameGeometry = {
    ...frame,
    members: frame.members.map((member): MemberGeometry => ({
      ...member,
      centreline: reverseCentreline(member.centreline),
      start: seat(member.finish),
      finish: seat(member.start),
    })),
  };
  const holes = {
    ...job.purge.holes,
    except: job.purge.holes.except.map(({ member, end }) => ({ member, end: other(end) })),
    toAir: job.purge.holes.toAir.map(({ at, bore }) => ({
      at: { ...at, distance: from(at.member, at.distance) },
      bore,
    })),
  };
  const fixing = job.fixing.map((point): FixingPoint =>
    point.at.spot !== 'start' && point.at.spot !== 'finish'
      ? point
      : { ...point, at: { ...point.at, spot: other(point.at.spot) } },
  );
  const sites = welds.map((weld) => ({
    ...weld,
    site: {
      ...weld.site,
      station: from(weld.site.member, weld.site.station),
      end: weld.site.end === null ? null : other(weld.site.end),
      ontoStation: weld.site.kind === 'saddle' ? from(weld.site.onto, weld.site.ontoStation) : 0,
    },
  }));
  return workload({ ...job, fixing, purge: { ...job.purge, holes } }, turned, sites);
}

const larger = ({ pieces, length }: Centreline, times: number): Centreline => ({
  pieces: pieces.map((piece): Piece => {
    const grown = { start: scale(piece.start, times), length: times * piece.length };
    return piece.kind === 'straight' ? { ...piece, ...grown } : { ...piece, ...grown, radius: times * piece.radius };
  }),
  length: times * length,
});

/** The same frame some times as large, of the same tube. */
export function scaled({ job, frame, welds }: PurgeWorkload, times: number): PurgeWorkload {
  const seat = (end: EndGeometry): EndGeometry =>
    end.kind === 'saddle' ? { ...end, station: times * end.station, offset: times * end.offset } : end;
  const members = frame.members.map((member) => ({
    ...member,
    centreline: larger(member.centreline, times),
    start: seat(member.start),
    finish: seat(member.finish),
  }));
  const toAir = job.purge.holes.toAir.map(({ at, bore }) => ({ at: { ...at, distance: times * at.distance }, bore }));
  const sites = welds.map((weld) => ({
    ...weld,
    site: { ...weld.site, station: times * weld.site.station, ontoStation: times * weld.site.ontoStation },
  }));
  const holes = { ...job.purge.holes, toAir };
  return workload({ ...job, purge: { ...job.purge, holes } }, { ...frame, members }, sites);
}
