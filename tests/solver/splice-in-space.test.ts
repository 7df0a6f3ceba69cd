import { describe, expect, it } from 'vitest';
import type { Frame } from '../../server/job/frame.ts';
import { cutJoints } from '../../server/solver/correction/splice/cut-joints.ts';
import { searchSplices } from '../../server/solver/correction/splice/search-splices.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import type { ArcPiece } from '../../server/solver/geometry/centreline.ts';
import { UNMOVED } from '../../server/solver/geometry/rigid-motion.ts';
import { cross, dot } from '../../server/solver/geometry/vector.ts';
import { deformed } from '../properties/returned-frames.ts';
import { DEGREE, drawnAs, misfitOf, splicedAt, taskOf } from '../properties/spliced-frames.ts';

/** A saw and a weld that take nothing: what a twist alone puts right is then right to the last hundredth. */
const NOTHING = { kerf: 0, shrinkage: 0 };

const points = (...all: [number, number, number][]) => ({
  by: 'points' as const,
  points: all.map(([x, y, z]) => ({ x, y, z, radius: null })),
  closed: false,
});
const free = { end: 'free' as const };
const onto = (name: string) => ({ end: 'saddle' as const, onto: name });

/** Two rails and two rungs; the right rail is turned about the first rung, the second rung sits on it or ends short. */
function ladder(turn: number, about: number, closed: boolean): FrameGeometry {
  const right = (y: number): [number, number, number] => [
    700,
    about + (y - about) * Math.cos(turn),
    (y - about) * Math.sin(turn),
  ];
  const frame: Frame = {
    shape: 'members',
    members: [
      { name: 'left', path: points([0, 0, 0], [0, 1200, 0]), start: free, finish: free },
      { name: 'right', path: points(right(0), right(1200)), start: free, finish: free },
      { name: 'rung 1', path: points([0, 300, 0], right(300)), start: onto('left'), finish: onto('right') },
      closed
        ? { name: 'rung 2', path: points([0, 900, 0], right(900)), start: onto('left'), finish: onto('right') }
        : { name: 'rung 2', path: points([0, 900, 0], [500, 900, 0]), start: onto('left'), finish: free },
    ],
  };
  return drawnAs(frame);
}

describe('a twisted ladder', () => {
  it.each([2, -5])('that one rung holds is levelled by one cut through it: %d degrees', (degrees) => {
    const [wanted, actual] = [ladder(0, 300, false), ladder(degrees * DEGREE, 300, false)];
    expect(actual.planeNormal).toBeNull();
    const { best } = searchSplices(taskOf(wanted, actual, { closing: NOTHING }));
    const { splice, ...found } = best.find(({ key }) => key === 'splice-fewest')!.candidate;
    expect(Math.max(found.fixingMisfit, found.cornerMisfit)).toBeLessThan(0.05);
    const cuts = cutJoints(splice, actual, UNMOVED);
    expect(cuts.map(({ member }) => member.name)).toEqual(['rung 1']);
    // the right rail was turned about +x, along the rung; it is turned back
    expect(cuts[0]!.twist / DEGREE).toBeCloseTo(-degrees, 3);
    expect(cuts[0]!.kink / DEGREE).toBeLessThan(0.001);
    expect(cuts[0]!.hiLo).toBeLessThan(0.001);
  });

  it('that is a closed loop keeps its rungs where one cut each is all: two parallel tubes hold each other', () => {
    const [wanted, actual] = [ladder(0, 600, true), ladder(3 * DEGREE, 600, true)];
    const task = taskOf(wanted, actual, { closing: NOTHING });
    const one = splicedAt(task, [
      ['rung 1', 350],
      ['rung 2', 350],
    ])!;
    expect(misfitOf(one)).toBeGreaterThan(10);
    expect(one.largestKink).toBeLessThan(0.1 * DEGREE);
  });

  it('that is a closed loop is levelled where its rungs have two joints each, at the price of kinks', () => {
    const [wanted, actual] = [ladder(0, 600, true), ladder(3 * DEGREE, 600, true)];
    const { candidates } = searchSplices(taskOf(wanted, actual, { closing: NOTHING, tape: 0.01 }));
    const closest = Math.min(...candidates.filter(({ largestHiLo }) => largestHiLo < 0.1).map(misfitOf));
    // a fiftieth of what the cuts of one joint each leave: the rest is weighed against the kinks
    expect(closest).toBeLessThan(0.4);
    const found = candidates.find((one) => misfitOf(one) === closest)!;
    const twists = cutJoints(found.splice, actual, UNMOVED).map(({ twist }) => twist / DEGREE);
    expect(Math.max(...twists.map(Math.abs))).toBeGreaterThan(0.5);
  });
});

describe('a run with one wrong rotation between two bends', () => {
  const wanted = drawnAs({
    shape: 'run',
    points: points([0, 0, 0], [700, 0, 0], [700, 800, 0], [1200, 800, 500], [1200, 1500, 500]).points,
  });
  const arcsOf = ({ members }: FrameGeometry) =>
    members[0]!.centreline.pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
  /** Turn of the plane of one bend about the tube, since the bend before [rad]. */
  const rotations = (frame: FrameGeometry) =>
    arcsOf(frame)
      .slice(1)
      .map((arc, index) => {
        const before = arcsOf(frame)[index]!.normal;
        return Math.atan2(dot(cross(before, arc.normal), arc.direction), dot(before, arc.normal));
      });

  it.each([
    ['before the second bend', 0, 0.4],
    ['before the third bend', 1, -0.7],
  ])('%s is put right by one cut on the straight between them', (_, wrong, share) => {
    let seen = -1;
    const actual = deformed(wanted, (_, what) => {
      if (what !== 'rotation') return 0;
      seen += 1;
      return seen === wrong ? share : 0;
    });
    const off = rotations(actual).map((rotation, index) => rotation - rotations(wanted)[index]!);
    expect(Math.abs(off[wrong]!)).toBeGreaterThan(2 * DEGREE);
    expect(Math.abs(off[1 - wrong]!)).toBeLessThan(1e-9);
    const task = taskOf(wanted, actual, { closing: NOTHING });
    const { best } = searchSplices(task);
    const { splice, welds, ...found } = best.find(({ key }) => key === 'splice-fewest')!.candidate;
    expect(welds).toBe(1);
    expect(Math.max(found.fixingMisfit, found.cornerMisfit)).toBeLessThan(0.05);
    const [cut] = cutJoints(splice, actual, UNMOVED);
    expect(cut!.twist).toBeCloseTo(-off[wrong]!, 5);
    expect(cut!.kink / DEGREE).toBeLessThan(0.001);
    expect(cut!.hiLo).toBeLessThan(0.001);
    // pieces 0 … 6: straights at even places; the cut is on the one before the bend
    expect(splice.joints[0]!.joint.place.stretch.piece).toBe(2 * (wrong + 1));
    // the tube that is turned fits where it was cut: nothing else moves
    expect(Math.abs(cut!.meetsB - cut!.meetsA)).toBeLessThan(0.01);
  });
});
