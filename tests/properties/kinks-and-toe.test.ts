import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Candidate } from '../../server/solver/correction/splice/candidate.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { turnOf } from '../../server/solver/geometry/rigid-motion.ts';
import { cross, dot, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { hoopOf, removedAt, splicedAt, taskOf, totalOf } from './spliced-frames.ts';

const UP: Vector3 = { x: 0, y: 0, z: 1 };

/** Turn from one direction to another about z [rad]. */
const signedAngle = (from: Vector3, to: Vector3): number => Math.atan2(dot(cross(from, to), UP), dot(from, to));

/** Turn of what the hoop's finish stands on, less that of what its start stands on [rad]. */
function farEndTurn({ splice }: Candidate, frame: FrameGeometry): number {
  const { bodies } = splice.problem.layout;
  const turns = [0, frame.members[0]!.centreline.length].map(
    (station) => turnOf(splice.motions[bodies.at(0, station)]!).z,
  );
  return turns[1]! - turns[0]!;
}

/** All kinks along the hoop, of new tube at both its ends [rad about z]. */
const kinksOf = ({ splice }: Candidate): number =>
  totalOf(
    splice.joints.map(({ sides: { a, b, letIn } }) =>
      letIn === null
        ? signedAngle(a.tangent, b.tangent)
        : signedAngle(a.tangent, letIn.atA) + signedAngle(letIn.atB, b.tangent),
    ),
  );

/** What the tube that was let in turns by itself [rad about z]. */
const letInTurns = ({ splice }: Candidate): number =>
  totalOf(splice.joints.map(({ sides: { letIn } }) => (letIn === null ? 0 : signedAngle(letIn.atA, letIn.atB))));

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Stations of joints off the middle of the crown, in shares of its half. */
const LAYOUTS: readonly (readonly [string, readonly number[]])[] = [
  ['one joint', [0]],
  ['one joint off the middle', [0.3]],
  ['two joints', [-0.45, 0.45]],
  ['two joints, uneven', [-0.5, 0.2]],
  ['three joints', [-0.6, 0, 0.6]],
];

const crownedSizes = fc.record({
  width: range(800, 1300),
  crown: range(1800, 6000),
  change: range(5, 70),
  longer: range(-15, 15),
  splay: range(-6, 6),
});

it.each(LAYOUTS)('kinks and toe share the turn that is taken out of a crown: %s', (_, shares) => {
  fc.assert(
    fc.property(crownedSizes, ({ width, crown, change, longer, splay }) => {
      const wanted = hoopOf({ width, crown, legs: [600, 600] });
      const made = width + change;
      const actual = hoopOf({ width: made, widthAtFeet: made + splay, crown, legs: [600, 600 + longer] });
      const { length, pieces } = actual.members[0]!.centreline;
      const half = pieces[2]!.length / 2 - 100;
      const joints = shares.map((share) => ['hoop', length / 2 + share * half] as const);
      const candidate = splicedAt(taskOf(wanted, actual), joints)!;
      const removed = totalOf(removedAt(candidate));
      expect(removed).toBeGreaterThan(0);
      // the crown turns clockwise from left to right, so what is taken out of it lets the far leg turn the other way
      expect(farEndTurn(candidate, actual) - kinksOf(candidate)).toBeCloseTo(removed / crown, 9);
    }),
    { numRuns: 40 },
  );
});

it('kinks, toe and the turn of what is let in make up for what a crown loses', () => {
  fc.assert(
    fc.property(crownedSizes, ({ width, crown, change, longer, splay }) => {
      const wanted = hoopOf({ width: width + change, crown, legs: [600, 600] });
      const actual = hoopOf({ width, widthAtFeet: width + splay, crown, legs: [600, 600 + longer] });
      const middle = actual.members[0]!.centreline.length / 2;
      const candidate = splicedAt(taskOf(wanted, actual), [['hoop', middle]])!;
      expect(candidate.splice.joints[0]!.sides.letIn).not.toBeNull();
      const lost = totalOf(removedAt(candidate)) / crown + letInTurns(candidate);
      expect(letInTurns(candidate)).toBeLessThan(0);
      expect(farEndTurn(candidate, actual) - kinksOf(candidate)).toBeCloseTo(lost, 9);
    }),
    { numRuns: 40 },
  );
});

it('out of a straight no turn is taken: the far end turns by the kinks alone', () => {
  fc.assert(
    fc.property(crownedSizes, ({ width, change, longer, splay }) => {
      const wanted = hoopOf({ width, legs: [600, 600] });
      const made = width + change;
      const actual = hoopOf({ width: made, widthAtFeet: made + splay, legs: [600, 600 + longer] });
      const { length } = actual.members[0]!.centreline;
      const joints = [length / 2 - 120, length / 2 + 90].map((station) => ['hoop', station] as const);
      const candidate = splicedAt(taskOf(wanted, actual), joints)!;
      expect(farEndTurn(candidate, actual)).toBeCloseTo(kinksOf(candidate), 9);
    }),
    { numRuns: 40 },
  );
});
