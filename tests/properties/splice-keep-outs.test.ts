import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { BarredStretch } from '../../server/job/closing.ts';
import { newJob } from '../../server/job/default-job.ts';
import { searchSplices, type SpliceTask } from '../../server/solver/correction/splice/search-splices.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { pieceStations } from '../../server/solver/geometry/slice.ts';
import { deformed, members as inSpace, ring } from './returned-frames.ts';
import { randomSource } from './returned-scatter.ts';
import { drawnAs, hoopOf, OUTSIDE_DIAMETER, taskOf } from './spliced-frames.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Room that a joint must leave [mm]; half a diameter beside a bend where a member has no other place at all. */
const BESIDE_BEND = 1.5 * OUTSIDE_DIAMETER;
const BESIDE_WELD = Math.max(1.5 * OUTSIDE_DIAMETER, 25);
const TIGHT = 1 / 3;

/** Stretches of a member where no part of a joint may stand [mm], worked out from the frame by itself. */
function kept(frame: FrameGeometry, name: string, barred: readonly BarredStretch[], share: number): [number, number][] {
  const member = frame.members.find((one) => one.name === name)!;
  const { length, pieces } = member.centreline;
  const stations = pieceStations(member.centreline);
  const out: [number, number][] = pieces.flatMap((piece, index): [number, number][] =>
    piece.kind === 'arc' && piece.made === 'die'
      ? [[stations[index]! - share * BESIDE_BEND, stations[index + 1]! + share * BESIDE_BEND]]
      : [],
  );
  const weld = (at: number, foot: number) =>
    out.push([at - foot - share * BESIDE_WELD, at + foot + share * BESIDE_WELD]);
  for (const other of frame.members) {
    for (const [end, at] of [
      [other.start, 0],
      [other.finish, other.centreline.length],
    ] as const) {
      if (end.kind !== 'saddle') continue;
      const foot = OUTSIDE_DIAMETER / 2 / Math.max(Math.sin(end.axisAngle), 0.2);
      if (end.onto === name) weld(end.station, foot);
      if (other.name === name) weld(at, foot);
    }
  }
  if (member.closed) for (const at of [0, length]) weld(at, 0);
  for (const { member: own, from, to, why } of barred) {
    if (own !== name) continue;
    const room = why === 'weld' ? share * BESIDE_WELD : 0;
    out.push([Math.min(from, to) - room, Math.max(from, to) + room]);
  }
  return out;
}

/** Checks every joint of every candidate; how many there were. */
function checked(task: SpliceTask): number {
  const { candidates } = searchSplices(task);
  const { cutMembers, barred } = task.closing;
  let joints = 0;
  for (const { splice } of candidates) {
    for (const { joint, middle, sides } of splice.joints) {
      const { name } = task.frame.members[joint.place.stretch.member]!;
      if (cutMembers.length > 0) expect(cutMembers).toContain(name);
      const half = Math.max(sides.half, 0);
      for (const [from, to] of kept(task.frame, name, barred, joint.place.stretch.tight ? TIGHT : 1)) {
        const apart = Math.max(from - (middle + half), middle - half - to);
        expect(apart, `${name} at ${String(middle)}, kept ${String(from)} to ${String(to)}`).toBeGreaterThan(-1e-5);
      }
      joints += 1;
    }
  }
  return joints;
}

const barredOf = (frame: FrameGeometry) =>
  fc.array(
    fc.record({
      member: fc.constantFrom(...frame.members.map(({ name }) => name)),
      from: range(0, 2000),
      size: range(5, 200),
      why: fc.constantFrom('fitting' as const, 'weld' as const, 'other' as const),
    }),
    { maxLength: 4 },
  );

it('no joint of a hoop stands where it must not', () => {
  let joints = 0;
  const wanted = hoopOf({ width: 1000, legs: [700, 700], crown: 2400, bars: [150, 400] });
  const sizes = fc.record({
    change: range(-50, 60),
    splay: range(-8, 8),
    crown: fc.constantFrom(null, 2400),
    bars: fc.constantFrom([], [150], [150, 400]),
    named: fc.subarray(['hoop', 'crossbar 1', 'crossbar 2']),
    joints: fc.integer({ min: 1, max: 3 }),
  });
  fc.assert(
    fc.property(sizes, barredOf(wanted), ({ change, splay, crown, bars, named, joints: mostJoints }, barred) => {
      const width = 1000 + change;
      const like = { legs: [700, 700] as const, crown, bars };
      const actual = hoopOf({ ...like, width, widthAtFeet: width + splay });
      const closing = {
        ...newJob('hoop').closing,
        mostJoints,
        cutMembers: named,
        barred: barred.map(({ member, from, size, why }) => ({ member, from, to: from + size, why })),
      };
      joints += checked(taskOf(hoopOf({ ...like, width: 1000 }), actual, { closing }));
    }),
    { numRuns: 40 },
  );
  expect(joints).toBeGreaterThan(100);
});

it('no joint of a frame in space or of a ring stands where it must not', () => {
  let joints = 0;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1000 }), fc.constantFrom(inSpace, ring), (seed, frame) => {
      const wanted = drawnAs(frame);
      const { normal } = randomSource(seed);
      const actual = wanted.members[0]!.closed ? wanted : deformed(wanted, () => 0.1 * normal());
      joints += checked(taskOf(wanted, actual));
    }),
    { numRuns: 15 },
  );
  expect(joints).toBeGreaterThan(50);
});
