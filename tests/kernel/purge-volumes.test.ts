// The geometry kernel as an independent witness of what is in a chamber: it sweeps every bore and cuts it off where the
// tube stops at the wall of the tube that it sits on.
import { beforeAll, describe, expect, it } from 'vitest';
import { measureVolume } from 'replicad';
import type { PlanPiece } from '../../server/plan/frame.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { newFrameWelds } from '../../server/solver/correction/new-frame-welds.ts';
import type { EndGeometry, FrameGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { planPurge } from '../../server/solver/purge/plan-purge.ts';
import { purgeContext } from '../../server/solver/purge/purge-context.ts';
import { weldSites, type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import { hoop, ladder, offset, ring, round, run, stand, TUBE } from './fit-up-shapes.ts';
import { startKernel, sweptRod } from './kernel.ts';

beforeAll(startKernel);

const OUTER = TUBE.outsideDiameter / 2;
const INNER = OUTER - TUBE.wall;

const HOOP = { width: 950, legs: [700, 700] as const };
const frames: [string, FrameGeometry][] = [
  ['hoop', hoop({ ...HOOP, bars: [] })],
  ['hoop with two crossbars', hoop({ ...HOOP, bars: [140, 460] })],
  ['crowned hoop with a crossbar', hoop({ ...HOOP, crown: 2400, bars: [250] })],
  ['splayed hoop with a crossbar', hoop({ ...HOOP, feet: 1100, bars: [240] })],
  ['ring', ring(900, 600)],
  ['offset', offset(300, 400)],
  ['ladder', ladder(500, 0)],
  ['ladder, turned', ladder(520, 140)],
  ['stand', stand(700)],
  ['round in space', round([930, 680], 60)],
  ['run in space', run([0, 0, 0], [800, 0, 0], [800, 700, 200], [300, 1000, 900], [300, 1700, 900])],
];

/** The saddle ends of a member. */
const seats = (member: MemberGeometry) =>
  [member.start, member.finish].filter((end): end is EndGeometry & { kind: 'saddle' } => end.kind === 'saddle');

/**
 * Bore between the axis of a straight tube and its outside [mm³]: over the section of the bore, with x along that tube and
 * y across it, (√(R² − (y − e)²) − x cos α)/sin α where that lies ahead of the end.
 */
function underSaddle({ axisAngle, offset }: { axisAngle: number; offset: number }): number {
  const [sine, cosine] = [Math.sin(axisAngle), Math.cos(axisAngle)];
  const rows = 2000;
  let sum = 0;
  for (let row = 0; row < rows; row += 1) {
    const y = INNER * ((2 * row + 1) / rows - 1);
    const wide = Math.sqrt(INNER ** 2 - y ** 2);
    const reach = Math.sqrt(OUTER ** 2 - (y - offset) ** 2);
    // to where it is ahead no more, along x
    const most = cosine > 0 ? Math.min(wide, reach / cosine) : wide;
    sum += ((reach * (most + wide) - (cosine * (most ** 2 - wide ** 2)) / 2) / sine) * ((2 * INNER) / rows);
  }
  return sum;
}

/** The piece of a member that a station is on. */
function pieceAt({ centreline }: MemberGeometry, station: number): PlanPiece {
  const pieces = planPieces(centreline);
  let begin = 0;
  for (const [index, { length }] of centreline.pieces.entries()) {
    if (station <= begin + length) return pieces[index]!;
    begin += length;
  }
  return pieces.at(-1)!;
}

/** What is inside a member: its bore as far as the outside of the tubes that it sits on [mm³]. */
function inside(member: MemberGeometry, { members }: FrameGeometry): number {
  const pieces = planPieces(member.centreline);
  if (member.closed) {
    // the kernel does not close a sweep in space on itself: two halves
    const half = Math.floor(pieces.length / 2);
    return [pieces.slice(0, half), pieces.slice(half)].reduce(
      (sum, part) => sum + measureVolume(sweptRod(part, INNER)),
      0,
    );
  }
  let bore = sweptRod(pieces, INNER);
  for (const { onto, station } of seats(member)) {
    const partner = members.find(({ name }) => name === onto);
    if (partner === undefined) throw new Error(`no ${onto}`);
    bore = bore.cut(sweptRod([pieceAt(partner, station)], OUTER));
  }
  return measureVolume(bore);
}

/** The purge of a frame whose saddles all have holes under them, so that it is one bore; cut once where it has no weld. */
function purged(frame: FrameGeometry) {
  const start = newJob('members');
  const job: Job = {
    ...start,
    tube: { ...start.tube, ...TUBE },
    purge: { ...start.purge, holes: { ...start.purge.holes, underSaddles: 'all' } },
  };
  const [first] = frame.members;
  const cut: WeldPlace = { kind: 'splice', joint: 1, side: '', member: first?.name ?? '', station: 150 };
  const welds = weldSites([cut, ...newFrameWelds(frame)], frame, []).map((site) => ({
    site,
    length: 114,
    arcTime: 76,
    fillerMass: 2.7,
    fillerLength: 170,
    torchFlow: 7,
    torchGas: 9,
    heat: 220,
  }));
  return planPurge(purgeContext(job, frame, welds)).purge;
}

describe('volume of a frame that is one bore', () => {
  it.each(frames)('%s', (_, frame) => {
    const chambers = purged(frame)?.chambers ?? [];
    expect(chambers).toHaveLength(1);
    const ours = chambers[0]!.volume.value * 1e6;
    const theirs = frame.members.reduce((sum, member) => sum + inside(member, frame), 0);
    // A centreline runs to the partner's axis, and the bore stops at the partner's outside.
    const between = frame.members.flatMap(seats).reduce((sum, seat) => sum + underSaddle(seat), 0);
    // the kernel itself measures a bore cut by a round tube to some thousandths of the piece that is cut off
    expect(Math.abs(ours - between - theirs)).toBeLessThan(1e-6 * theirs + 0.005 * between);
    // so a time is never too short for it, and too long by less than a diameter of bore for each saddle end
    const ends = frame.members.flatMap(seats).length;
    expect(between).toBeLessThanOrEqual(ends * Math.PI * INNER ** 2 * TUBE.outsideDiameter);
  });
});
