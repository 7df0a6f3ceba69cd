import { describe, expect, it } from 'vitest';
import type { Member, MemberFrame } from '../../server/job/frame.ts';
import { leaveWay } from '../../server/solver/correction/leave-way.ts';
import { rebentFrame } from '../../server/solver/correction/rebend.ts';
import { rebendWay } from '../../server/solver/correction/rebend-way.ts';
import { changeFor } from '../../server/solver/correction/rebend.ts';
import { relaidFrame } from '../../server/solver/correction/relaid-frame.ts';
import { arcsOf } from '../../server/solver/correction/turn-limits.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { mirrorFrame } from '../../server/solver/frame/mirror-frame.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { closestStation } from '../../server/solver/geometry/closest-station.ts';
import { moved } from '../../server/solver/geometry/rigid-motion.ts';
import { length, subtract } from '../../server/solver/geometry/vector.ts';
import { DEGREE, drawn, EASY, RUN, workOn } from './made-up-corrections.ts';

type Points = readonly (readonly [number, number, number])[];

const member = (name: string, points: Points, start?: string, finish?: string): Member => {
  const end = (onto: string | undefined) =>
    onto === undefined ? { end: 'free' as const } : { end: 'saddle' as const, onto };
  const path = { by: 'points' as const, points: points.map(([x, y, z]) => ({ x, y, z, radius: null })), closed: false };
  return { name, path, start: end(start), finish: end(finish) };
};

const hoopAt = (name: string, z: number): Member =>
  member(name, [
    [0, 0, z],
    [0, 1000, z],
    [900, 1000, z],
    [900, 0, z],
  ]);

/** Two hoops, three straight ties between them, and a bent tube from leg to leg. */
const CAGE: MemberFrame = {
  shape: 'members',
  members: [
    hoopAt('front', 0),
    hoopAt('back', 600),
    member(
      'left tie',
      [
        [0, 500, 0],
        [0, 500, 600],
      ],
      'front',
      'back',
    ),
    member(
      'right tie',
      [
        [900, 500, 0],
        [900, 500, 600],
      ],
      'front',
      'back',
    ),
    member(
      'rail',
      [
        [0, 300, 0],
        [0, 300, -300],
        [900, 300, -300],
        [900, 300, 0],
      ],
      'front',
      'front',
    ),
  ],
};

const cage = drawn(CAGE);
const run = drawn(RUN);

function turnedBy(frame: FrameGeometry, degrees: Readonly<Record<string, readonly number[]>>): FrameGeometry {
  const seen = new Map<string, number>();
  const turns = arcsOf(frame).map((arc) => {
    const index = seen.get(arc.member) ?? 0;
    seen.set(arc.member, index + 1);
    return { ...arc, turn: (degrees[arc.member]?.[index] ?? 0) * DEGREE };
  });
  return rebentFrame(frame, turns);
}

describe('tubes that sit on others', () => {
  const bent = turnedBy(cage, { front: [1.5, -1] });

  it('are laid from seat to seat again, or keep their shape', () => {
    for (const name of ['left tie', 'right tie']) {
      const tie = bent.members.find((one) => one.name === name)!;
      for (const [side, end] of [
        [0, tie.start],
        [tie.centreline.length, tie.finish],
      ] as const) {
        if (end.kind !== 'saddle') throw new Error('a tie sits on both hoops');
        const partner = bent.members.find((one) => one.name === end.onto)!;
        const at = placeAt(tie.centreline, side)!.point;
        expect(closestStation(partner.centreline, at)!.distance).toBeLessThan(1e-6);
      }
    }
    const [was, now] = [cage, bent].map((frame) => frame.members.find(({ name }) => name === 'rail')!.centreline);
    expect(now!.pieces.map((piece) => piece.length)).toEqual(
      was!.pieces.map((piece) => expect.closeTo(piece.length, 9) as number),
    );
  });

  it('are parted where their seats move apart, and a bent one says how far it stays off', () => {
    const turns = arcsOf(cage).map((arc, index) => ({ ...arc, turn: index === 0 ? 1.5 * DEGREE : 0 }));
    const { refitted } = relaidFrame(cage, changeFor(turns, new Set()));
    expect(refitted.map((one) => one.member)).toEqual(['right tie', 'rail']);
    expect(refitted[0]!.off).toBe(0);
    // the leg has swung in by about 700 mm times 1.5 degrees at the rail
    expect(refitted[1]!.off).toBeGreaterThan(5);
    expect(refitted[1]!.off).toBeLessThan(12);
  });

  it('carry their places with them', () => {
    const turns = arcsOf(cage).map((arc, index) => ({ ...arc, turn: index === 0 ? 1.5 * DEGREE : 0 }));
    const laid = relaidFrame(cage, changeFor(turns, new Set()));
    for (const [index, one] of cage.members.entries()) {
      const { centreline } = one;
      for (const share of [0, 0.2, 0.5, 0.9, 1]) {
        const at = placeAt(centreline, share * centreline.length)!.point;
        const now = moved(laid.motionAt(one.name, share * centreline.length), at);
        expect(closestStation(laid.members[index]!.centreline, now)!.distance).toBeLessThan(1e-6);
      }
    }
  });
});

describe('frames in space', () => {
  it('a hoop of a cage that came back splayed is bent back and the cage is right again', () => {
    const ties = drawn({ ...CAGE, members: CAGE.members.slice(0, 4) });
    const { way } = rebendWay(workOn(ties, turnedBy(ties, { front: [2, -1.2] })), EASY);
    expect(
      way.rebends.filter((row) => row.member === 'front').map(({ turn }) => Math.round(turn.value * 1e3) / 1e3),
    ).toEqual([-2, 1.2]);
    expect(way.fixingMisfit.value).toBeLessThan(0.05);
    expect(way.cornerMisfit.value).toBeLessThan(0.05);
  });

  it('a leg that is too long is cut back along its own tube', () => {
    const long = drawn({
      ...RUN,
      shape: 'run',
      points: (RUN.shape === 'run' ? RUN.points : []).map((point, index, all) =>
        index === all.length - 1 ? { ...point, y: point.y + 25 } : point,
      ),
    });
    const way = leaveWay(workOn(run, long));
    expect(way.trims.map(({ end, length: size }) => [end, Math.round(size.value * 1e6) / 1e6])).toEqual([
      ['finish', 25],
    ]);
    expect(way.fixingMisfit.value).toBeLessThan(1e-6);
  });

  it('the frame for the other side is left as far off', () => {
    const off = turnedBy(cage, { front: [1.1, 0.3], back: [-0.4, 0], rail: [0.5, 0] });
    const one = leaveWay(workOn(cage, off));
    const other = leaveWay(workOn(mirrorFrame(cage), mirrorFrame(off)));
    expect(one.fixingMisfit.value).toBeGreaterThan(1);
    expect(other.fixingMisfit.value).toBeCloseTo(one.fixingMisfit.value, 6);
    expect(other.cornerMisfit.value).toBeCloseTo(one.cornerMisfit.value, 6);
    expect(other.toe.value).toBeCloseTo(one.toe.value, 6);
    for (const [index, fixing] of other.fixings.entries())
      expect(fixing.misfit.value).toBeCloseTo(one.fixings[index]!.misfit.value, 6);
  });

  it('is drawn where it lies on the wanted one', () => {
    const way = leaveWay(workOn(run, run));
    for (const [index, piece] of way.members[0]!.pieces.entries())
      expect(length(subtract(piece.from, run.members[0]!.centreline.pieces[index]!.start))).toBeLessThan(1e-6);
  });
});
