import { describe, expect, it } from 'vitest';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { correctionTargets } from '../../server/solver/correction/correction-targets.ts';
import { struckPosts } from '../../server/solver/correction/struck-posts.ts';
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
    const { targets, posts } = correctionTargets({ ...input, fixing: [] });
    expect(posts).toEqual([]);
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
    const post = { fixing: 'post' as const, name: 'post', at: none, axis: none, diameter: 100, clearance: 5 };
    const { findings } = correctionTargets({ ...input, fixing: [hole, post] });
    expect(findings.map(({ code, field }) => [code, field])).toEqual([
      ['fixing-no-place', '/fixing/0/at'],
      ['fixing-no-axis', '/fixing/1/axis'],
    ]);
  });

  it('a post leaves room, or does not', () => {
    const at = { x: hoop.feet[0]!.point.x + 150, y: -800, z: 0 };
    const post = {
      fixing: 'post' as const,
      name: 'pile',
      at,
      axis: { x: 0, y: 0, z: 2 },
      diameter: 200,
      clearance: 20,
    };
    const { posts } = correctionTargets({ ...input, actual: hoop, fixing: [post] });
    const frame = {
      motionAt: () => UNMOVED,
      members: hoop.members.map(({ name, centreline }) => ({ name, parts: [centreline] })),
    };
    const { rooms } = judge({ wanted: hoop, actual: hoop, targets: [], posts }, frame);
    expect(rooms[0]!.room).toBeCloseTo(150 - 100 - D / 2 - 20, 4);
    const tight = [{ ...post, clearance: 40 }];
    const near = correctionTargets({ ...input, actual: hoop, fixing: tight }).posts;
    const short = judge({ wanted: hoop, actual: hoop, targets: [], posts: near }, frame).rooms[0]!.room;
    expect(short).toBeCloseTo(150 - 100 - D / 2 - 40, 4);
    // the wanted frame itself lacks that room: it is told, and no way is measured by it
    expect(struckPosts(tight, hoop, D)).toMatchObject([{ field: '/fixing/0', name: 'pile' }]);
    expect(struckPosts(tight, hoop, D)[0]!.lacks).toBeCloseTo(-short, 6);
    expect(leaveWay(workOn(hoop, hoop, { fixing: tight })).fixings.some(({ fixing }) => fixing === 'post')).toBe(false);
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
