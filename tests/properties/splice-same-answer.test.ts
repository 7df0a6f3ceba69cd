import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { searchSplices, type SpliceTask } from '../../server/solver/correction/splice/search-splices.ts';
import type { Candidate } from '../../server/solver/correction/splice/candidate.ts';
import { turnAbout } from '../../server/solver/geometry/rigid-motion.ts';
import {
  hoopOf,
  misfitOf,
  removedAt,
  splicedAt,
  stoodElsewhere,
  taskOf,
  totalOf,
  type HoopSizes,
} from './spliced-frames.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A hoop and what it came back as; its inner crossbars stand at right angles, its crown is straight or curved. */
const came = fc.record({
  width: range(800, 1200),
  change: range(8, 60),
  splay: range(-8, 8),
  longer: range(-12, 12),
  crown: fc.constantFrom(null, 2400, 4000),
  bars: fc.constantFrom([], [150]),
});
type Came = typeof came extends fc.Arbitrary<infer T> ? T : never;

const wantedSizes = ({ width, crown, bars }: Came): HoopSizes => ({ width, legs: [600, 600], crown, bars });
const actualSizes = ({ width, change, splay, longer, crown, bars }: Came): HoopSizes => ({
  width: width + change,
  widthAtFeet: width + change + splay,
  legs: [600, 600 + longer],
  crown,
  bars,
});

/** The joints of a candidate: member, station of the middle, kink [rad] and what is taken out [mm]. */
const jointsOf = (one: Candidate, task: SpliceTask) => {
  const removed = removedAt(one);
  return inOrder(
    one.splice.joints.map(({ joint, middle, sides }, index) => ({
      member: task.frame.members[joint.place.stretch.member]!.name,
      middle,
      length: task.frame.members[joint.place.stretch.member]!.centreline.length,
      removed: removed[index]!,
      kink: Math.hypot(
        sides.b.tangent.x - sides.a.tangent.x,
        sides.b.tangent.y - sides.a.tangent.y,
        sides.b.tangent.z - sides.a.tangent.z,
      ),
    })),
  );
};

type Joints = ReturnType<typeof jointsOf>;

const inOrder = <T extends { readonly member: string; readonly middle: number }>(joints: T[]): T[] =>
  joints.sort((a, b) => (a.member < b.member ? -1 : a.member > b.member ? 1 : a.middle - b.middle));

const mirrored = (joints: Joints): Joints =>
  inOrder(joints.map((joint) => ({ ...joint, middle: joint.length - joint.middle })));

/** Whether two lists are the same joints to a hundredth of a millimetre, their kinks to a ten-thousandth of a radian. */
const areSame = (some: Joints, others: Joints): boolean =>
  some.length === others.length &&
  some.every(({ member, middle, removed, kink }, index) => {
    const other = others[index]!;
    const off = Math.max(Math.abs(other.middle - middle), Math.abs(other.removed - removed));
    return other.member === member && off < 0.01 && Math.abs(other.kink - kink) < 1e-4;
  });

const bestOf = (task: SpliceTask) => {
  const { best } = searchSplices(task);
  return best.map(({ key, candidate }) => ({ key, candidate, joints: jointsOf(candidate, task) }));
};

describe('the best splices are the same', () => {
  it('of a hoop that is stood somewhere else in space', () => {
    const turned = fc.integer({ min: -300, max: 300 }).map((hundredths) => hundredths / 100);
    const turn = fc.tuple(turned, turned, turned);
    fc.assert(
      fc.property(came, turn, fc.tuple(range(-5000, 5000), range(-900, 900)), (sizes, [x, y, z], [far, high]) => {
        const [wanted, actual] = [hoopOf(wantedSizes(sizes)), hoopOf(actualSizes(sizes))];
        const motion = turnAbout({ x: 0, y: 0, z: 0 }, { x, y, z }, { x: far, y: -far, z: high });
        const here = bestOf(taskOf(wanted, actual));
        const there = bestOf(taskOf(stoodElsewhere(wanted, motion), stoodElsewhere(actual, motion)));
        expect(there.map(({ key }) => key)).toEqual(here.map(({ key }) => key));
        for (const [index, { candidate, joints }] of here.entries()) {
          const other = there[index]!;
          expect(other.joints.map(({ member }) => member)).toEqual(joints.map(({ member }) => member));
          // a frame that is its own mirror image has two places that are equally good
          expect([joints, mirrored(joints)].some((either) => areSame(either, other.joints))).toBe(true);
          expect(misfitOf(other.candidate)).toBeCloseTo(misfitOf(candidate), 3);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('of a frame ten times as large or as small, its tube, tape and saw with it', () => {
    fc.assert(
      fc.property(came, fc.constantFrom(0.1, 10), fc.constantFrom([0], [-0.3, 0.4]), (sizes, scale, shares) => {
        // what a fingernail finds does not scale: a frame that these joints put right whole, and joints that stay put
        const at = (by: number) => {
          const actual = hoopOf({ ...actualSizes({ ...sizes, longer: 0 }), scale: by });
          const joints = actual.members.flatMap(({ name, centreline: { length, pieces } }) => {
            const half = pieces.length > 2 ? pieces[2]!.length / 2 - 100 * by : length / 2 - 100 * by;
            return shares.map((share): [string, number] => [name, length / 2 + share * half]);
          });
          return splicedAt(taskOf(hoopOf({ ...wantedSizes(sizes), scale: by }), actual, { scale: by }), joints)!;
        };
        const [one, other] = [at(1), at(scale)];
        // how two joints share it hangs on little: what is taken out of each member does not
        const crown = shares.length;
        for (const [from, to] of [
          [0, crown],
          [crown, undefined],
        ] as const) {
          const [whole, part] = [one, other].map((of) => totalOf(removedAt(of).slice(from, to)));
          expect(Math.abs(part! / scale - whole!)).toBeLessThan(0.3);
        }
        if (crown === 1) expect(Math.abs(other.largestKink - one.largestKink)).toBeLessThan(1e-3);
        expect(Math.abs(misfitOf(other) / scale - misfitOf(one))).toBeLessThan(0.3 + 0.05 * misfitOf(one));
      }),
      { numRuns: 30 },
    );
  });

  it('the other way round of a hoop that is mirrored', () => {
    fc.assert(
      fc.property(came, (sizes) => {
        const [left, right] = [600, 600 + sizes.longer];
        const [wanted, actual] = [wantedSizes(sizes), actualSizes(sizes)];
        const here = bestOf(taskOf(hoopOf(wanted), hoopOf({ ...actual, legs: [left, right] })));
        const there = bestOf(taskOf(hoopOf(wanted), hoopOf({ ...actual, legs: [right, left] })));
        expect(there.map(({ key }) => key)).toEqual(here.map(({ key }) => key));
        for (const [index, { candidate, joints }] of here.entries()) {
          const other = there[index]!;
          expect(other.candidate.score).toBeCloseTo(candidate.score, 3);
          expect(misfitOf(other.candidate)).toBeCloseTo(misfitOf(candidate), 3);
          // where a place and its mirror image are equally good, either may be found
          expect([mirrored(joints), joints].some((either) => areSame(either, other.joints))).toBe(true);
        }
      }),
      { numRuns: 20 },
    );
  });
});
