import { describe, expect, it } from 'vitest';
import type { TubePlace } from '../../server/job/tube-place.ts';
import type { Post } from '../../server/solver/correction/corrected.ts';
import { correctionTargets } from '../../server/solver/correction/correction-targets.ts';
import { sortedPosts } from '../../server/solver/correction/struck-posts.ts';
import { leaveWay } from '../../server/solver/correction/leave-way.ts';
import { judge } from '../../server/solver/correction/outcome.ts';
import { rebentFrame } from '../../server/solver/correction/rebend.ts';
import { arcsOf } from '../../server/solver/correction/turn-limits.ts';
import { spotAt } from '../../server/solver/frame/tube-place-spot.ts';
import { UNMOVED } from '../../server/solver/geometry/rigid-motion.ts';
import { placeTyped, pointOf } from '../../server/solver/returned/tube-places.ts';
import { D, DEGREE, drawn, HOOP, workOn } from './made-up-corrections.ts';

const outside = (value: number) => ({ value, reference: 'outside' as const });
const hoop = drawn(HOOP);

describe('targets', () => {
  const place = (spot: TubePlace['spot'], number = 1, distance = 0): TubePlace => ({
    member: 'hoop',
    spot,
    number,
    distance,
  });
  const splayed = rebentFrame(
    hoop,
    arcsOf(hoop).map((arc, index) => ({ ...arc, turn: index === 0 ? 2 * DEGREE : 0 })),
  );
  const none = { x: 0, y: 0, z: 0 };
  const input = { wanted: hoop, actual: splayed, outsideDiameter: D, tape: 1, tolerance: 3 };

  it('without fixing points the free ends are, where the wanted frame has them', () => {
    const { targets } = correctionTargets({ ...input, fixing: [] });
    expect(targets.filter(({ kind }) => kind === 'fixing').map(({ name, wanted }) => [name, wanted])).toEqual([
      ['1', hoop.feet[0]!.point],
      ['2', hoop.feet[1]!.point],
    ]);
    expect(targets.filter(({ kind }) => kind === 'corner')).toHaveLength(2);
    expect(targets.filter(({ kind }) => kind === 'guide').map(({ tolerance }) => tolerance)).toEqual([10]);
  });

  it('a pad goes with its tube, and lands where it is told', () => {
    const off = { x: 0, y: 0, z: -60 };
    const lands = { x: 5, y: -500, z: -60 };
    const pad = {
      fixing: 'pad' as const,
      name: 'pad',
      at: place('along', 1, 300),
      off,
      lands,
      tolerance: 2,
      plate: null,
    };
    const { targets, findings } = correctionTargets({ ...input, fixing: [pad] });
    expect(findings).toEqual([]);
    expect(targets[0]).toMatchObject({ kind: 'fixing', wanted: lands, tolerance: 2, name: 'pad', field: '/fixing/0' });
    expect(targets[0]!.off.z).toBeCloseTo(-60, 9);
    expect(targets.filter(({ kind }) => kind === 'fixing')).toHaveLength(1);
    // free ends then count as corners do
    expect(targets.filter(({ kind }) => kind === 'corner')).toHaveLength(4);
  });

  it('a place that the frame does not have is told at its field', () => {
    const hole = {
      fixing: 'hole' as const,
      name: 'hole',
      at: place('corner', 7),
      off: none,
      lands: null,
      tolerance: null,
      plate: null,
    };
    const { findings } = correctionTargets({ ...input, fixing: [hole] });
    expect(findings.map(({ code, field }) => [code, field])).toEqual([['fixing-no-place', '/fixing/0/at']]);
  });

  it('a post leaves room, or does not', () => {
    const at = { x: hoop.feet[0]!.point.x + 150, y: -800, z: 0 };
    const standing = (clearance: number, ends: { from: number; to: number } | null = null): Post => ({
      field: '/site/things/0',
      name: 'pile',
      solid: { shape: 'cylinder', at, axis: { x: 0, y: 0, z: 1 }, radius: 100, ends },
      keep: D / 2 + clearance,
      atRest: true,
    });
    const frame = {
      motionAt: () => UNMOVED,
      members: hoop.members.map(({ name, centreline }) => ({ name, parts: [centreline] })),
    };
    const roomsOf = (...posts: Post[]) => judge({ wanted: hoop, actual: hoop, targets: [], posts }, frame).rooms();
    expect(roomsOf(standing(20))[0]!.room).toBeCloseTo(150 - 100 - D / 2 - 20, 4);
    const tight = standing(40);
    const short = roomsOf(tight)[0]!.room;
    expect(short).toBeCloseTo(150 - 100 - D / 2 - 40, 4);
    // the wanted frame itself lacks that room: it is told, and no way is measured by it
    const { clear, struck } = sortedPosts([tight, { ...tight, atRest: false }, standing(20)], hoop);
    expect(clear).toMatchObject([standing(20)]);
    expect(clear[0]!.spare).toBeCloseTo(roomsOf(standing(20))[0]!.room, 6);
    expect(struck).toMatchObject([{ field: '/site/things/0', name: 'pile' }]);
    expect(struck[0]!.lacks).toBeCloseTo(-short, 6);
    expect(roomsOf(standing(20, { from: -50, to: 50 }))[0]!.room).toBeCloseTo(150 - 100 - D / 2 - 20, 4);
    // one that ends below the tubes is passed over its flat end, and one at two places counts where it is nearer
    const below = standing(20, { from: -300, to: -60 });
    expect(roomsOf(below)[0]!.room).toBeCloseTo(Math.hypot(50, 60) - D / 2 - 20, 4);
    expect(roomsOf(below, standing(20)).map(({ room }) => room)).toEqual(roomsOf(standing(20)).map(({ room }) => room));
    const leave = leaveWay(workOn(hoop, hoop, { posts: [standing(20), below] }));
    expect(leave.fixings.filter(({ fixing }) => fixing === 'post')).toHaveLength(1);
  });
});

describe('places on a tube', () => {
  const at = (
    spot: 'start' | 'finish' | 'corner' | 'bend-start' | 'bend-end' | 'middle' | 'along',
    number = 1,
    distance = 0,
  ) => spotAt({ member: 'hoop', spot, number, distance }, hoop);
  const [leg, bend, bar] = hoop.members[0]!.centreline.pieces.map(({ length }) => length);

  it('are found by what a person finds there', () => {
    expect(at('start')!.station).toBe(0);
    expect(at('finish')!.station).toBeCloseTo(hoop.members[0]!.centreline.length, 9);
    expect(at('bend-start')!.station).toBeCloseTo(leg!, 9);
    expect(at('bend-end')!.station).toBeCloseTo(leg! + bend!, 9);
    expect(at('corner')!.station).toBeCloseTo(leg! + bend! / 2, 9);
    expect(at('corner')!.point.y).toBeCloseTo(0, 9);
    expect(at('middle', 3)!.station).toBeCloseTo(leg! + bend! + bar! / 2, 9);
    expect(at('along', 1, 250)!.point.y).toBeCloseTo(hoop.feet[0]!.point.y + 250, 9);
  });

  it('and are not there beyond the frame', () => {
    for (const gone of [at('corner', 3), at('bend-start', 3), at('bend-end', 3), at('middle', 6), at('along', 1, 9000)])
      expect(gone).toBeUndefined();
    expect(spotAt({ member: 'mast', spot: 'start', number: 1, distance: 0 }, hoop)).toBeUndefined();
  });

  describe('a distance along, on a frame that came back otherwise,', () => {
    const [longLeft, longRight] = [{ leftLeg: outside(1115) }, { rightLeg: outside(1115) }].map((change) =>
      drawn({ ...HOOP, ...change }),
    );
    const [first, , middle, , last] = hoop.members[0]!.centreline.pieces.map(({ length }) => length);
    const whole = hoop.members[0]!.centreline.length;
    const along = (distance: number, frame: typeof hoop) =>
      spotAt({ member: 'hoop', spot: 'along', number: 1, distance }, frame, hoop)!;

    it('stays where a tape from the nearer end finds it', () => {
      expect(along(first! / 2, longLeft!).station).toBeCloseTo(first! / 2, 9);
      const grown = longRight!.members[0]!.centreline.length;
      expect(grown).toBeGreaterThan(whole + 100);
      expect(along(whole - last! / 3, longRight!).station).toBeCloseTo(grown - last! / 3, 9);
    });

    it('keeps its share of a piece between bends', () => {
      const wider = drawn({ ...HOOP, width: outside(1000) });
      const spot = along(first! + bend! + middle! / 4, wider);
      expect(spot.station).toBeCloseTo(first! + bend! + (middle! + 100) / 4, 9);
    });

    it('is where a reading at the same place is taken', () => {
      let count = 0;
      for (const frame of [hoop, longLeft!, longRight!, drawn({ ...HOOP, leftLeg: outside(700) })]) {
        const lines = frame.members.map(({ centreline }) => centreline);
        for (let distance = 0; distance <= whole; distance += whole / 40) {
          const at: TubePlace = { member: 'hoop', spot: 'along', number: 1, distance };
          const read = pointOf(placeTyped(hoop, at)!, lines)!;
          const fixed = spotAt(at, frame, hoop)!.point;
          expect(Math.hypot(read.x - fixed.x, read.y - fixed.y, read.z - fixed.z)).toBeLessThan(1e-9);
          count += 1;
        }
      }
      expect(count).toBeGreaterThan(150);
    });
  });
});
